import {readFileSync} from 'node:fs';
import {expect, test} from 'vitest';
import {finished} from '../../../source/science/numeric/finished.ts';
import type {BassField} from '../../../source/study/arrangement/field.ts';
import {judgeBass} from '../../../source/study/arrangement/judged.ts';
import {plainSetting, type SubSetting} from '../../../source/study/arrangement/subSetting.ts';
import {bestSubSettings} from '../../../source/study/arrangement/subSettings.ts';

type Reference = {
	readonly frequenciesHertz: readonly number[];
	readonly subs: number;
	readonly seats: number;
	readonly fields: ReadonlyArray<{readonly real: readonly number[]; readonly imaginary: readonly number[]}>;
	readonly plain: {readonly spreadDb: number};
	readonly best: {
		readonly spreadDb: number;
		readonly settings: ReadonlyArray<readonly [delayMs: number, gainDb: number, sign: number]>;
	};
};

// scipy.optimize.differential_evolution at equal objective, on fields made by numpy: test/reference/subSettings.py.
const reference: Reference = JSON.parse(
	readFileSync(new URL('../../reference/subSettings.json', import.meta.url), 'utf8'),
);
const fields = reference.fields.map(
	({real, imaginary}): BassField => ({
		sources: reference.subs,
		receivers: reference.seats,
		frequenciesHertz: reference.frequenciesHertz,
		real: Float64Array.from(real),
		imaginary: Float64Array.from(imaginary),
	}),
);
const judged = (settings: readonly SubSetting[]) => judgeBass(fields, settings);
const theirs = reference.best.settings.map(([delayMs, gainDb, sign]) => ({
	delayMs,
	gainDb,
	isInverted: sign < 0,
}));
const steps = {delayStepMs: 0.1, mostDelayMs: 100, gainStepDb: 0.5, leastGainDb: -20, canInvert: true};

test('the objective is the same as in the reference, for plain settings and for its best', () => {
	// Fields and settings are kept to seven and three digits.
	expect(judged([plainSetting, plainSetting, plainSetting]).meanDb).toBeCloseTo(reference.plain.spreadDb, 4);
	expect(judged(theirs).meanDb).toBeCloseTo(reference.best.spreadDb, 2);
});

test('settings come near the best that a global search finds, one sub after the other as they are', () => {
	const found = finished(bestSubSettings(fields, steps));
	// Less than what the tool calls no difference, 0.2 dB; the global search is not bound to the box's steps.
	expect(found.judged.meanDb - reference.best.spreadDb).toBeLessThan(0.2);
	// And no better than it by more than the steps could hide: the objectives would differ.
	expect(found.judged.meanDb).toBeGreaterThan(reference.best.spreadDb - 0.01);
	expect(found.settings[0]).toEqual(plainSetting);
	// The reference is bound to 12 ms, so are we.
	for (const {delayMs} of found.settings) expect(Math.abs(delayMs)).toBeLessThan(12.0001);
});
