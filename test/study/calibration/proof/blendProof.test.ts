import {expect, test} from 'vitest';
import type {
	Explanation,
	Mistake,
	ProofResult,
} from '../../../../source/study/calibration/proof/proofResult.ts';
import {prove} from '../../../../source/study/calibration/proof/prove.ts';
import {type SimulatedBlend, type Standing, simulateBlend} from './simulatedBlend.ts';
import {normal, uniform} from './simulatedRoom.ts';

const quiet: SimulatedBlend = {
	former: {subDelayMs: 0, isInverted: false, crossoverHertz: 80},
	intended: {subDelayMs: 3, isInverted: false, crossoverHertz: 80},
	// At the corner the low-pass of fourth order turns by −180°, the high-pass of second by +90°: a quarter of a period
	// more brings the two into phase at 80 Hz.
	lagMs: -3 + 1000 / 320,
	mainDb: 75,
	subDb: 76,
	tones: [60, 80, 100],
	noiseDb: 0,
	repeats: 2,
};
const silent = () => 0;
const has = ({explanations}: {readonly explanations: readonly Explanation[]}, code: Mistake['code']) =>
	explanations.some(({mistakes}) => mistakes.length === 1 && mistakes[0]!.code === code);
const names = ({findings}: ProofResult, code: Mistake['code']) =>
	findings.some(finding => has(finding, code));
const withMistake = (room: SimulatedBlend, change: Partial<Standing>): Standing => ({
	...room.intended,
	...change,
});

test('`prove` forecasts tones of main and sub together within 0.2 dB of complex pressures without noise', () => {
	const result = prove(simulateBlend(quiet, quiet.intended, silent));
	expect(result.verdict).toBe('met');
	// Levels of 0.3 dB noise leave the phase a few degrees wide, which is what the forecast averages over.
	for (const {residual} of result.readings) expect(Math.abs(residual)).toBeLessThan(0.2);
});

test('`prove` names the turned polarity from three tones, and the delay no longer fits alike', () => {
	const {findings} = prove(simulateBlend(quiet, withMistake(quiet, {isInverted: true}), silent));
	expect(findings[0]!.explanations[0]!.mistakes.map(({code}) => code)).toEqual(['slip-polarity']);
	expect(findings[0]!.explanations[0]!.trust).not.toBe('possible');
});

test('`prove` cannot tell polarity from delay by one tone and names both', () => {
	const room = {...quiet, tones: [80]};
	const result = prove(simulateBlend(room, withMistake(room, {isInverted: true}), silent));
	expect(names(result, 'slip-polarity')).toBe(true);
	expect(names(result, 'slip-sub-delay')).toBe(true);
	for (const {explanations} of result.findings)
		for (const {trust} of explanations) expect(trust).not.toBe('certain');
});

test('`prove` names a forgotten delay of the sub', () => {
	const room = {...quiet, intended: {...quiet.intended, subDelayMs: 5}, lagMs: -5 + 1000 / 320};
	const result = prove(simulateBlend(room, room.former, silent));
	expect(names(result, 'slip-sub-delay-forgotten')).toBe(true);
});

test('`prove` names a wrong crossover by the main’s own level at the tones', () => {
	const {findings} = prove(simulateBlend(quiet, withMistake(quiet, {crossoverHertz: 120}), silent));
	const best = findings[0]!.explanations[0]!;
	expect(best.mistakes).toMatchObject([{code: 'slip-crossover', about: ['FC']}]);
	expect(best.mistakes[0]!.facts).toEqual({stands: 120, should: 80});
});

test.each([
	['slip-polarity', {isInverted: true}],
	['slip-crossover', {crossoverHertz: 120}],
	['slip-sub-delay-forgotten', {subDelayMs: 0}],
] as const)('`prove` names a planted mistake in 95 % of 60 noisy blends or more: %s', (kind, change) => {
	const random = uniform(31);
	const noise = normal(random);
	let named = 0;
	for (let round = 0; round < 60; round++) {
		const intended = {...quiet.intended, subDelayMs: 5};
		const room = {...quiet, intended, lagMs: -5 + 1000 / 320, noiseDb: 0.2 + 0.1 * random()};
		const result = prove(simulateBlend(room, withMistake(room, change), noise));
		if (result.verdict === 'missed' && names(result, kind)) named++;
	}

	expect(named).toBeGreaterThanOrEqual(57);
});

test('`prove` raises a false alarm in at most 1 % of 200 clean noisy blends', () => {
	const random = uniform(37);
	const noise = normal(random);
	let alarms = 0;
	for (let round = 0; round < 200; round++) {
		const room = {...quiet, noiseDb: 0.2 + 0.1 * random()};
		if (prove(simulateBlend(room, room.intended, noise)).verdict !== 'met') alarms++;
	}

	expect(alarms).toBeLessThanOrEqual(2);
});
