import fc from 'fast-check';
import {expect, test} from 'vitest';
import type {MeterReading, Profile} from '../../../../source/profile/types.ts';
import {collect} from '../../../../source/study/calibration/blend/collect.ts';
import {apartOf, pairGain} from '../../../../source/study/calibration/blend/pair/pairChange.ts';
import {fitToneSum} from '../../../../source/study/calibration/blend/toneSum.ts';
import {blendInputs} from '../../../afresh.ts';
import {dialledIn, profileWith, subs} from './pairRoom.ts';

const start = dialledIn(profileWith(), 'distances');
const inputs = blendInputs(start);
const sofa = {seat: 'sofa', weighting: 'Z', round: 'first', inForce: 'distances'} as const;
const collected = (meter: readonly MeterReading[]) =>
	collect({...inputs, profile: {...start, meter: [...meter]} as Profile});

/** Level of two sounds by the law of cosines, dB; `phase` is what the second lags by, radians. */
const both = (oneDb: number, otherDb: number, phase: number) =>
	10 *
	Math.log10(
		10 ** (oneDb / 10) + 10 ** (otherDb / 10) + 2 * 10 ** ((oneDb + otherDb) / 20) * Math.cos(phase),
	);

const tone = (hertz: number, decibels: number, change: Partial<MeterReading> = {}): MeterReading => ({
	...sofa,
	source: subs,
	signal: {kind: 'tone', hertz},
	decibels,
	...change,
});
const later = (subIds: readonly string[], addedDelayMs: number): Partial<MeterReading> => ({
	addedDelayMs,
	addedDelaySources: [...subIds],
});

const level = fc.double({min: 60, max: 75, noNaN: true});
const angle = fc.double({min: -3.1, max: 3.1, noNaN: true});

test('three levels of both give the gain of any delay and polarity between them, as the law of cosines has it', () => {
	fc.assert(
		fc.property(
			level,
			// Never as loud as the first, so that nothing cancels to where a hole is held.
			fc.double({min: 3, max: 12, noNaN: true}),
			angle,
			fc.double({min: -10, max: 10, noNaN: true}),
			fc.boolean(),
			(one, softer, phase, wantedMs, isTurned) => {
				const other = one - softer;
				const lag = (ms: number) => (2 * Math.PI * 50 * ms) / 1000;
				const read = [0, 5.6, 11.2].map(ms =>
					tone(50, both(one, other, phase + lag(ms)), ms === 0 ? {} : later(['sub2'], ms)),
				);
				const {pair, stands} = collected(read);
				const sum = fitToneSum(50, pair.tones.get(50)!)!;
				const from = apartOf(stands);
				const to = {laterMs: from.laterMs + wantedMs, inverted: isTurned};
				const expected =
					both(one, other, phase + lag(wantedMs) + (isTurned ? Math.PI : 0)) - both(one, other, phase);
				// Readings are not rounded here: what is left is double precision.
				expect(pairGain([sum], from, to).value).toBeCloseTo(expected, 6);
			},
		),
		{seed: 3, numRuns: 40},
	);
});

test('what is changed of both subs alike changes nothing between them; of one alone it does, whichever is named', () => {
	const found = (change: Partial<MeterReading>) => collected([tone(50, 70, change)]).pair.tones.get(50)![0]!;
	const standing = found({});
	expect(found(later(subs, 4)).laterMs).toBeCloseTo(standing.laterMs, 9);
	expect(found({invertedSources: subs}).inverted).toBe(standing.inverted);
	expect(found(later(['sub2'], 4)).laterMs).toBeCloseTo(standing.laterMs + 4, 9);
	expect(found(later(['sub1'], 4)).laterMs).toBeCloseTo(standing.laterMs - 4, 9);
	for (const sub of subs) expect(found({invertedSources: [sub]}).inverted).toBe(!standing.inverted);
});

test('a set that holds the delay counts as a reading that adds it', () => {
	const [last] = start.settings!.slice(-1);
	const delayMs = {stepped: last!.outputs!.B!.delayMs!.stepped + 4};
	const held = {...last!, id: 'held', outputs: {...last!.outputs, B: {...last!.outputs!.B, delayMs}}};
	const profile = {...start, settings: [...start.settings!, held]};
	const read = (reading: MeterReading) =>
		collect({...inputs, profile: {...profile, meter: [tone(40, 70), reading]}}).pair.tones.get(50)![0]!;
	const byHand = read(tone(50, 70, later(['sub2'], 4)));
	expect(read(tone(50, 70, {inForce: 'held'})).laterMs).toBeCloseTo(byHand.laterMs, 9);
});

test('tones with another balance between the subs say nothing of this one', () => {
	const [last] = start.settings!.slice(-1);
	const gainDb = {stepped: (last!.outputs!.B!.gainDb?.stepped ?? 0) - 3};
	const held = {...last!, id: 'softer', outputs: {...last!.outputs, B: {...last!.outputs!.B, gainDb}}};
	const profile = {...start, settings: [...start.settings!, held]};
	const meter = [tone(50, 70, {inForce: 'softer'}), tone(50, 70)];
	expect(collect({...inputs, profile: {...profile, meter}}).pair.tones.get(50)).toHaveLength(1);
});

test('noise of the subs after a change of one is no level of them together', () => {
	const noise = (change: Partial<MeterReading>): MeterReading => ({
		...sofa,
		source: subs,
		signal: {kind: 'pink', fromHertz: 28.2, toHertz: 112.2},
		decibels: 75,
		...change,
	});
	const {pairNoise, noise: ofFronts} = collected([noise({}), noise({invertedSources: ['sub2']})]);
	expect(pairNoise.map(({what, base}) => [what, base !== undefined])).toEqual([
		['lfe', false],
		['lfe', true],
	]);
	expect(ofFronts).toEqual([]);
});
