import {expect, test} from 'vitest';
import type {MeterReading, Profile} from '../../../../source/profile/types.ts';
import {collectPairs, meterSigmaDb} from '../../../../source/study/calibration/blend/collect.ts';
import {roomProfile} from './room.ts';

const profile = roomProfile({
	crossoverHertz: 80,
	mainsLimitHertz: 80,
	subLimitHertz: 25,
	arrivalMs: {FC: 8, sub1: 12},
	levelDb: () => 75,
});
const reading = (
	source: MeterReading['source'],
	decibels: number,
	change: Partial<MeterReading> = {},
): MeterReading => ({
	source,
	seat: 'sofa',
	decibels,
	weighting: 'Z',
	signal: {kind: 'tone', hertz: 80},
	round: 'first',
	...change,
});
const both = ['FC', 'sub1'];
const collect = (meter: MeterReading[], change: Partial<Profile> = {}) =>
	collectPairs({...profile, ...change, meter});

test('collectPairs finds no pair without a reading of both, and no tone without both sides alone', () => {
	expect(collect([reading('FC', 75), reading('sub1', 74)]).pairs).toEqual([]);
	expect(collect([reading('FC', 75), reading(both, 79)]).pairs[0]!.tones).toEqual([]);
});

// Repeats are averaged on energy: 74 and 76 dB give 10·lg((10^7.4 + 10^7.6)/2) = 75.114 dB, with 1/√2 of the spread.
test('collectPairs averages repeats of one side on energy and narrows their uncertainty', () => {
	const [tone] = collect([reading('FC', 74), reading('FC', 76), reading('sub1', 74), reading(both, 79)])
		.pairs[0]!.tones;
	expect(tone!.stillDb).toBeCloseTo(75.114, 3);
	expect(tone!.stillSigmaDb).toBeCloseTo(0.3 / Math.SQRT2, 9);
});

// IEC 61672-1 at 80 Hz: C −0.5 dB, A −22.5 dB, so levels of one sound under three weightings are one level.
test('collectPairs takes the weighting out of every reading', () => {
	const [tone] = collect([
		reading('FC', 75),
		reading('sub1', 74.5, {weighting: 'C'}),
		reading(both, 56.5, {weighting: 'A'}),
	]).pairs[0]!.tones;
	expect(tone!.movedDb).toBeCloseTo(75, 1);
	expect(tone!.both[0]!.decibels).toBeCloseTo(79, 0);
});

// 65 dB over a background of 57 dB: 10·lg(10^6.5 − 10^5.7) = 64.25 dB.
test('collectPairs takes the background out, and leaves a tone out that hardly rises above it', () => {
	const background = reading('background', 57, {signal: undefined});
	const {pairs, remarks} = collect([background, reading('FC', 65), reading('sub1', 74), reading(both, 75)]);
	expect(pairs[0]!.tones[0]!.stillDb).toBeCloseTo(64.25, 2);
	expect(remarks).toEqual([]);
	const drowned = collect([background, reading('FC', 59), reading('sub1', 74), reading(both, 75)]);
	expect(drowned.pairs[0]!.tones).toEqual([]);
	expect(drowned.remarks[0]).toMatchObject({
		code: 'tone-in-background',
		text: expect.stringMatching(/reading 2/),
	});
});

test('collectPairs brings levels to the trims that stand, and notes each reading of both with its own', () => {
	const set = (id: string, trim: number) => ({
		id,
		origin: 'entered' as const,
		channels: {FC: {trimDb: {stepped: trim}, crossoverHertz: 80}},
	});
	const [tone] = collect(
		[
			reading('FC', 73, {inForce: 'low'}),
			reading(both, 78, {inForce: 'low'}),
			reading('sub1', 74, {inForce: 'high'}),
			reading(both, 79, {inForce: 'high'}),
		],
		{settings: [set('low', -2), set('high', 0)]},
	).pairs[0]!.tones;
	expect(tone!.stillDb).toBeCloseTo(75, 9);
	expect(tone!.both.map(({stillOffsetDb}) => stillOffsetDb)).toEqual([-2, 0]);
});

test('collectPairs leaves out readings at other seats and those put aside', () => {
	expect(
		collect([reading('FC', 75), reading('sub1', 74), reading(both, 79, {setAside: true})]).pairs,
	).toEqual([]);
	expect(collect([reading('FC', 75), reading('sub1', 74), reading(both, 79, {seat: 'back'})]).pairs).toEqual(
		[],
	);
});

test('meterSigmaDb is what the kit says, 0.5 dB where it says nothing, and never next to nothing', () => {
	expect(meterSigmaDb(profile)).toBe(0.3);
	expect(meterSigmaDb({...profile, kit: {}})).toBe(0.5);
	expect(meterSigmaDb({...profile, kit: {meterSigmaDb: 1e-9}})).toBe(0.02);
});
