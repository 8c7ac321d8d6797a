import {expect, test} from 'vitest';
import {channelOrder} from '../../../source/science/signal/channelMask.ts';

// Masks of common layouts, as ksmedia.h names them: stereo 0x3, 5.1 with side surrounds 0x60f, 7.1 0x63f.
test.each([
	[['FL', 'FR'], 0x3],
	[['FL', 'FR', 'FC', 'LFE1', 'SiL', 'SiR'], 0x60f],
	[['FL', 'FR', 'FC', 'LFE1', 'LS', 'RS'], 0x60f],
	[['FL', 'FR', 'FC', 'LFE1', 'BL', 'BR', 'SiL', 'SiR'], 0x63f],
])('channelOrder of %j has the published mask', (channels, mask) => {
	expect(channelOrder(channels)).toEqual({channels, mask, unplaced: []});
});

test('channelOrder sorts channels by their bit, as the format demands', () => {
	const {channels, mask} = channelOrder(['SiL', 'TpFL', 'LFE1', 'FR', 'BL', 'FL']);
	expect(channels).toEqual(['FL', 'FR', 'LFE1', 'BL', 'SiL', 'TpFL']);
	expect(mask).toBe(0x1 + 0x2 + 0x8 + 0x10 + 0x200 + 0x1000);
});

test('channelOrder puts channels without a place last and out of the mask', () => {
	expect(channelOrder(['TpSiL', 'FL', 'LFE2', 'FR'])).toEqual({
		channels: ['FL', 'FR', 'TpSiL', 'LFE2'],
		mask: 0x3,
		unplaced: ['TpSiL', 'LFE2'],
	});
});

test('channelOrder lets a surround pair keep no place that side channels have taken', () => {
	expect(channelOrder(['LS', 'RS', 'SiL', 'SiR']).unplaced).toEqual(['LS', 'RS']);
});
