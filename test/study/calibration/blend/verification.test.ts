import {expect, test} from 'vitest';
import type {NoiseReading} from '../../../../source/study/calibration/blend/noise.ts';
import {noiseStates, trialsOf} from '../../../../source/study/calibration/blend/verification.ts';

const tolerances = {togetherMs: 0.3, apartMs: 0.3};
const offset = (laterMs: number, inverted = false) => ({
	laterMs,
	inverted,
	relation: [{apartMs: 0, isTurned: false}],
});
let index = 0;
const noise = (
	what: NoiseReading['what'],
	at: ReturnType<typeof offset>,
	...levels: readonly number[]
): NoiseReading[] =>
	levels.map(levelDb => ({
		what,
		offset: at,
		levelDb,
		sigmaDb: 0.5,
		balance: '',
		isSearch: false,
		index: index++,
	}));
const verdicts = (...readings: NoiseReading[][]) =>
	trialsOf(noiseStates(readings.flat(), tolerances), false).map(({verdict}) => verdict);

test('a setting is kept where neither is softer and the gains add up to 0.8 dB', () => {
	const before = [...noise('centre', offset(0), 70, 70), ...noise('fronts', offset(0), 75, 75)];
	const after = (centre: number, fronts: number) => [
		...noise('centre', offset(4), centre, centre),
		...noise('fronts', offset(4), fronts, fronts),
	];
	expect(verdicts(before, after(70.4, 75.5))).toEqual(['kept']);
	expect(verdicts(before, after(70.3, 75.3))).toEqual(['put back']);
	// One much louder does not pay for the other.
	expect(verdicts(before, after(69.9, 78))).toEqual(['put back']);
});

test('nothing is decided before each was read twice before and after', () => {
	const before = [...noise('centre', offset(0), 70, 70), ...noise('fronts', offset(0), 75, 75)];
	expect(verdicts(before)).toEqual([]);
	expect(verdicts(before, noise('centre', offset(4), 75, 75))).toEqual(['open']);
	expect(verdicts(before, noise('centre', offset(4), 75, 75), noise('fronts', offset(4), 79))).toEqual([
		'open',
	]);
});

test('a second setting is held against the one that was kept, not against the start', () => {
	const at = (laterMs: number, level: number) => [
		...noise('centre', offset(laterMs), level, level),
		...noise('fronts', offset(laterMs), level, level),
	];
	expect(verdicts(at(0, 70), at(3, 73), at(6, 72))).toEqual(['kept', 'put back']);
	expect(verdicts(at(0, 70), at(3, 68), at(6, 72))).toEqual(['put back', 'kept']);
});

test('delays that differ by less than a step are one setting, a turned polarity is another', () => {
	const states = noiseStates(
		[
			...noise('centre', offset(0), 70),
			...noise('centre', offset(0.2), 71),
			...noise('centre', offset(0, true), 60),
		],
		tolerances,
	);
	expect(states.map(({centre}) => centre!.count)).toEqual([2, 1]);
});
