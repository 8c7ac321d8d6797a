import {expect, test} from 'vitest';
import {tapeDistanceM} from '../../../source/calibration/headroom/distances.ts';
import type {Profile} from '../../../source/profile/types.ts';

const tape = [
	{from: 'FL', to: 'sofa', metres: 3},
	{from: 'sofa', to: 'FL', metres: 3.02},
	{from: 'FL', to: 'sofa', metres: 9, setAside: true},
	{from: 'FR', to: 'sofa', metres: 0},
];

test('tapeDistanceM is undefined without a reading of more than nothing', () => {
	expect(tapeDistanceM({tape} as unknown as Profile, 'FR', 'sofa')).toBeUndefined();
	expect(tapeDistanceM({} as Profile, 'FL', 'sofa')).toBeUndefined();
});

test('tapeDistanceM is the mean of readings in both directions, without those put aside', () => {
	expect(tapeDistanceM({tape} as unknown as Profile, 'FL', 'sofa')).toBeCloseTo(3.01, 12);
});
