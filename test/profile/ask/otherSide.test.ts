import {expect, test} from 'vitest';
import {otherSide} from '../../../source/profile/ask/otherSide.ts';
import {channelIds, channelNames} from '../../../source/profile/channels.ts';

test('otherSide swaps left and right in the plain name too, and back again', () => {
	for (const id of channelIds) {
		const other = otherSide(id);
		const name = channelNames[id];
		if (other === undefined) {
			expect(name, id).not.toMatch(/left|right/i);
			continue;
		}

		const mirrored = name.replace(/left/i, '~').replace(/right/i, 'left').replace('~', 'right');
		expect(channelNames[other].toLowerCase(), id).toBe(mirrored.toLowerCase());
		expect(otherSide(other)).toBe(id);
	}
});

test('otherSide of something that is no channel is nothing', () => {
	expect(otherSide('sub1')).toBeUndefined();
	expect(otherSide('wall:left')).toBeUndefined();
});
