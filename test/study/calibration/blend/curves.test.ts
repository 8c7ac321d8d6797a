import {expect, test} from 'vitest';
import {blend} from '../../../../source/study/calibration/blend/blend.ts';
import {blendCurves} from '../../../../source/study/calibration/blend/curves.ts';
import {roomProfile, type Truth, takeReading} from './room.ts';

const truth: Truth = {
	crossoverHertz: 80,
	mainsLimitHertz: 80,
	subLimitHertz: 25,
	arrivalMs: {FC: 8, sub1: 13},
	levelDb: () => 75,
};
const set = {
	id: 'now',
	origin: 'entered' as const,
	channels: {FC: {delayMs: {stepped: 5}, crossoverHertz: 80}, LFE1: {delayMs: {stepped: 5}}},
};
const empty = roomProfile(truth, {settings: [set]});
const read = {
	...empty,
	meter: blend(empty).steps.map(step =>
		takeReading(truth, {delayMs: {FC: 5, sub1: 5}}, step, ['sub1'], 0, 'now'),
	),
};

test('blendCurves are undefined for a pair without an answer', () => {
	const [pair] = blend(read).pairs;
	expect(blendCurves(read, {...pair!, minima: []})).toBeUndefined();
	expect(blendCurves(read, {...pair!, id: 'FL|sub1'})).toBeUndefined();
});

// Linkwitz (1976): both sides −6.02 dB at the crossover, up to the 0.1 dB that the sub's low end takes there.
test('blendCurves meet at the crossover and add up there after the setting', () => {
	const curves = blendCurves(read, blend(read).pairs[0]!)!;
	const middle = curves.frequenciesHz.findIndex(f => f >= 80 - 1e-9);
	expect(curves.stillDb[middle]).toBeCloseTo(-6.02, 1);
	expect(curves.movedDb[middle]).toBeCloseTo(-6.06, 1);
	expect(curves.thenDb[middle]).toBeGreaterThan(-0.3);
	expect(curves.nowDb[middle]).toBeLessThan(curves.thenDb[middle]! - 3);
});
