import {expect, test} from 'vitest';
import type {ChannelId} from '../../source/profile/channels.ts';
import {commonPractice, layoutOf} from '../../source/profile/layouts.ts';

const five = ['FL', 'FR', 'FC', 'LS', 'RS', 'LFE1'] as const;
const seven = ['FL', 'FR', 'FC', 'SiL', 'SiR', 'BL', 'BR', 'LFE1'] as const;
const front = ['TpFL', 'TpFR'] as const;
const back = ['TpBL', 'TpBR'] as const;
const side = ['TpSiL', 'TpSiR'] as const;
const at = (channels: readonly ChannelId[], id: ChannelId) => layoutOf(channels).places.get(id)!;

test('layoutOf gives no place to low-frequency channels and takes an empty list', () => {
	expect(layoutOf([]).name).toBe('0.0');
	expect(layoutOf(five).places.has('LFE1')).toBe(false);
});

test.each<[string, readonly ChannelId[]]>([
	['2.0', ['FL', 'FR']],
	['5.1', five],
	['5.1.2', [...five, ...side]],
	['5.1.4', [...five, ...front, ...back]],
	['7.1', seven],
	['7.1.4', [...seven, ...front, ...back]],
	['9.1.6', [...seven, 'FLw', 'FRw', ...front, ...side, ...back]],
])('layoutOf names %s', (name, channels) => {
	expect(layoutOf(channels).name).toBe(name);
});

// ITU-R BS.2051-1 (06/2017), systems A, B, C, D, I and J, as transcribed in the public renderer data of the European
// Broadcasting Union; ITU-R BS.775-3 figure 1. Rows: channels, channel, azimuth, its range, elevation, its range.
test.each<
	[
		string,
		readonly ChannelId[],
		ChannelId,
		number,
		readonly number[] | undefined,
		number,
		readonly number[] | undefined,
	]
>([
	['A M+030', ['FL', 'FR'], 'FL', 30, undefined, 0, undefined],
	['B M-030', five, 'FR', -30, undefined, 0, undefined],
	['B M+110', five, 'LS', 110, [100, 120], 0, [0, 15]],
	['B M-110', five, 'RS', -110, [-120, -100], 0, [0, 15]],
	['C U+030', [...five, ...front], 'TpFL', 30, [30, 45], 30, [30, 55]],
	['D U-110', [...five, ...front, ...back], 'TpBR', -110, [-135, -100], 30, [30, 55]],
	['I M+030', seven, 'FL', 30, [30, 45], 0, undefined],
	['I M-090', seven, 'SiR', -90, [-110, -85], 0, undefined],
	['I M+135', seven, 'BL', 135, [120, 150], 0, undefined],
	['J U+045', [...seven, ...front, ...back], 'TpFL', 45, [30, 45], 30, [30, 55]],
	['J U-135', [...seven, ...front, ...back], 'TpBR', -135, [-150, -100], 30, [30, 55]],
])(
	'layoutOf holds the published angles of %s',
	(_, channels, id, azimuth, azimuthRange, elevation, elevationRange) => {
		const place = at(channels, id);
		expect(place.azimuthDegrees).toBe(azimuth);
		expect(place.azimuthRange).toEqual(azimuthRange);
		expect(place.elevationDegrees).toBe(elevation);
		expect(place.elevationRange).toEqual(elevationRange);
		expect(place.source).toMatch(/ITU-R/);
	},
);

test('layoutOf judges one pair of surrounds as that pair, whatever it is called', () => {
	for (const pair of [
		['LS', 'RS'],
		['SiL', 'SiR'],
		['BL', 'BR'],
	] as const) {
		expect(at(['FL', 'FR', 'FC', ...pair], pair[0]).azimuthRange).toEqual([100, 120]);
	}

	expect(at(['FL', 'FR', 'FC', 'LS', 'RS', 'BL', 'BR'], 'LS').azimuthRange).toEqual([85, 110]);
});

test('layoutOf marks overheads that the recommendation does not list as common practice', () => {
	expect(at([...five, ...side], 'TpSiL').source).toBe(commonPractice);
	expect(at([...seven, ...front], 'TpFL').source).toContain(commonPractice);
	expect(at([...seven, ...front, ...back], 'TpFL').source).not.toContain(commonPractice);
});
