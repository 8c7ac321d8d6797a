import {describe, expect, test} from 'vitest';
import type {Profile} from '../../../../source/profile/types.ts';
import {solve} from '../../../afresh.ts';
import {emptyRoom, level} from '../room.ts';
import {sentence} from '../sentence.ts';

const channel = (profile: Profile, id = 'FL') => solve(profile).channels.find(other => other.id === id)!;
const text = (profile: Profile, code: string, id = 'FL') =>
	sentence(
		channel(profile, id).remarks.find(other => other.code === code),
		profile,
	);

describe('one level', () => {
	test('repeats are averaged on energy', () => {
		// 10·lg((10^7 + 10^8) / 2) = 77.404 of 70 and 80 dB.
		const profile = emptyRoom({meter: [level('FL', 70), level('FL', 80)]});
		expect(channel(profile).level).toMatchObject({repeats: 2, spreadDb: 10});
		expect(channel(profile).level!.decibels).toBeCloseTo(77.404, 3);
	});

	test('the background is taken out before the rest', () => {
		// 80 over 70: 10·lg(10^8 − 10^7) = 79.542.
		const profile = emptyRoom({meter: [level('FL', 80), level('background', 70)]});
		expect(channel(profile).level!.decibels).toBeCloseTo(79.542, 3);
		expect(channel(profile).level!.backgroundCorrectionDb).toBeCloseTo(-0.458, 3);
		expect(text(profile, 'background-corrected')).toBe(
			'Front left: 10.0 dB above the background; 0.46 dB taken off.',
		);
	});

	test('a background with another weighting is not used', () => {
		const profile = emptyRoom({meter: [level('FL', 80), level('background', 70, {weighting: 'A'})]});
		expect(channel(profile).level!.decibels).toBe(80);
	});

	test('a reading 5 dB above the background is corrected, doubted, and less sure', () => {
		const profile = emptyRoom({meter: [level('FL', 75), level('background', 70)]});
		expect(text(profile, 'background-near')).toContain('5.0 dB above the background; 1.7 dB taken off');
		// 0.5 dB · 1 / (1 − 10^−0.5) = 0.731 and as much of the background's own doubt.
		expect(channel(profile).level!.sigmaDb).toBeCloseTo(Math.hypot(0.731, 0.231), 2);
	});

	test('a reading 2 dB above the background is refused with advice', () => {
		const profile = emptyRoom({meter: [level('FL', 72), level('background', 70)]});
		expect(channel(profile).level).toBeUndefined();
		expect(channel(profile).trimDb).toBeUndefined();
		expect(text(profile, 'background-too-high')).toBe(
			'Front left: 72.0 dB is only 2.0 dB above the background of 70.0 dB. Nothing can be told from it. Play the signal louder or make the room quieter, then read again.',
		);
	});

	test('the weighting is corrected for the band that was played', () => {
		// C on a sub reads 1.23 dB low on pink noise 28.2–112.2 Hz.
		const profile = emptyRoom({
			channels: [{id: 'FL'}, {id: 'LFE1'}],
			subs: [{id: 'sub', name: 'Sub', fedBy: 'LFE1'}],
			meter: [level('sub', 74, {weighting: 'C'})],
		});
		expect(solve(profile).subs[0]!.level!.decibels).toBeCloseTo(75.228, 3);
	});

	test('A weighting on a sub is corrected, and the meter is to be switched', () => {
		const profile = emptyRoom({
			channels: [{id: 'LFE1'}],
			subs: [{id: 'sub', name: 'Sub', fedBy: 'LFE1'}],
			meter: [level('sub', 50, {weighting: 'A'})],
		});
		expect(solve(profile).subs[0]!.remarks.map(found => sentence(found, profile))).toContain(
			'Sub: with A weighting the meter reads 24.3 dB low on pink noise 28–112 Hz. Switch the meter to C and read again.',
		);
	});

	test('the meter’s own offset is added', () => {
		const profile = emptyRoom({kit: {meterOffsetDb: -1.5}, meter: [level('FL', 76.5)]});
		expect(channel(profile).level!.decibels).toBe(75);
	});

	test('a repeat that differs is named with its number', () => {
		const profile = emptyRoom({channels: [{id: 'FR'}], meter: [level('FR', 71.5), level('FR', 73.1)]});
		expect(text(profile, 'level-spread', 'FR')).toBe(
			'Front right: 73.1 dB, 1.6 dB above its repeat. Take it once more with the meter on a stand.',
		);
	});

	test('tones, moved delays, the proof and readings set aside do not count', () => {
		const profile = emptyRoom({
			meter: [
				level('FL', 75),
				level('FL', 90, {signal: {kind: 'tone', hertz: 80}}),
				level('FL', 90, {addedDelayMs: 2}),
				level('FL', 90, {round: 'proof'}),
				level('FL', 90, {setAside: true}),
			],
		});
		expect(channel(profile).level).toMatchObject({decibels: 75, repeats: 1});
	});
});

describe('settings in force', () => {
	test('the trim that stood is part of the new one: trim in force + target − level', () => {
		// −2 + 75 − 74 = −1; without saying so, +1.
		const inForce = {channels: {FL: {trimDb: {stepped: -2}}}};
		expect(channel(emptyRoom({meter: [level('FL', 74, {inForce})]})).trimDb!.exact).toBeCloseTo(-1, 9);
		expect(channel(emptyRoom({meter: [level('FL', 74)]})).trimDb!.exact).toBeCloseTo(1, 9);
	});

	test('a stored set is found by its id', () => {
		const profile = emptyRoom({
			settings: [{id: 'old', origin: 'found', channels: {FL: {trimDb: {stepped: 3}}}}],
			meter: [level('FL', 74, {inForce: 'old'})],
		});
		expect(channel(profile).trimDb!.exact).toBeCloseTo(4, 9);
	});

	test('repeats under different trims are brought to the same before they are averaged', () => {
		const profile = emptyRoom({
			meter: [
				level('FL', 74, {inForce: {channels: {FL: {trimDb: {stepped: 0}}}}}),
				level('FL', 76, {inForce: {channels: {FL: {trimDb: {stepped: 2}}}}}),
			],
		});
		expect(channel(profile).level).toMatchObject({decibels: 76, spreadDb: 0});
		expect(channel(profile).trimDb!.exact).toBeCloseTo(1, 9);
	});

	test('readings at another master volume are brought to the usual one', () => {
		const at = (masterVolumeDb: number) => ({inForce: {masterVolumeDb, channels: {}}});
		const profile = emptyRoom({
			channels: [{id: 'FL'}, {id: 'FR'}, {id: 'FC'}],
			meter: [level('FL', 75, at(-20)), level('FC', 75, at(-20)), level('FR', 85, at(-10))],
		});
		for (const id of ['FL', 'FR', 'FC']) expect(channel(profile, id).trimDb!.stepped).toBe(0);
		expect(solve(profile).masterVolumeDb).toBe(-20);
	});

	test('no word about trims in force counts as 0 dB, and is said', () => {
		const codes = solve(emptyRoom({meter: [level('FL', 75)]})).remarks.map(({code}) => code);
		expect(codes).toContain('trims-assumed-zero');
	});
});

describe('trims together', () => {
	test('the common remainder goes to the master volume', () => {
		// Both 0.2 dB short: 0.0 for both, 0.2 dB for the master.
		const solution = solve(emptyRoom({meter: [level('FL', 74.8), level('FR', 74.8)]}));
		expect(solution.channels.map(({trimDb}) => trimDb!.stepped)).toEqual([0, 0]);
		expect(solution.masterVolumeChangeDb).toBeCloseTo(0.2, 9);
		// Less than the box can do is not asked for.
		expect(solution.masterVolumeTurnDb).toBe(0);
	});

	test('a target that no trim reaches is left to the master volume, with the smallest change', () => {
		// 30 dB short, range ±12: the trims only match FR to FL.
		const solution = solve(
			emptyRoom({
				channels: [{id: 'FL'}, {id: 'FR'}, {id: 'FC'}],
				meter: [level('FL', 45), level('FR', 43), level('FC', 45)],
			}),
		);
		expect(solution.channels.map(({trimDb}) => trimDb!.stepped)).toEqual([0, 2, 0]);
		expect(solution.masterVolumeChangeDb).toBeCloseTo(30, 9);
		expect(solution.masterVolumeTurnDb).toBeCloseTo(30, 9);
		expect(sentence(solution.remarks.find(({code}) => code === 'master-volume'))).toContain(
			'Turn the master volume up by 30.0 dB',
		);
	});

	test('levels farther apart than the range lose at the outlier, and the sentence says where', () => {
		const profile = emptyRoom({
			channels: [{id: 'FL'}, {id: 'FR'}, {id: 'FC'}],
			meter: [level('FL', 75), level('FR', 75), level('FC', 105)],
		});
		const solution = solve(profile);
		expect(solution.channels.map(({trimDb}) => trimDb!.stepped)).toEqual([12, 12, -12]);
		expect(solution.worstLevelErrorDb).toBeCloseTo(6, 9);
		const told = solution.remarks.find(({code}) => code === 'level-spread-does-not-fit')!;
		expect(told).toMatchObject({kind: 'problem', about: ['FC']});
		expect(sentence(told)).toContain('Front centre is 6.0 dB too loud against most others');
	});
});

describe('points around a seat', () => {
	const sigmaOf = (profile: Profile) => channel(profile).trimDb!.sigma!;

	test('points count alike, however often each was read, by their energy', () => {
		// 10·lg((10^7 + 10^8) / 2) = 77.404 of 70 dB, read three times, and 80 dB.
		const profile = emptyRoom({
			meter: [level('FL', 70), level('FL', 70), level('FL', 70), level('FL', 80, {point: 2})],
		});
		expect(channel(profile).level!.decibels).toBeCloseTo(77.404, 3);
	});

	test('points that differ are no odd one out, and no sign of a meter that scatters', () => {
		const profile = emptyRoom({meter: [level('FL', 72), level('FL', 77, {point: 2})]});
		expect(channel(profile).remarks.map(({code}) => code)).not.toContain('level-spread');
		expect(channel(profile).level!.sigmaDb).toBeCloseTo(0.5 / Math.SQRT2, 9);
	});

	test('the ± of a trim holds what the points cannot tell of the seat', () => {
		const points = (count: number) =>
			emptyRoom({
				meter: Array.from({length: count}, (_, index) =>
					level('FL', 75, index === 0 ? {} : {point: index + 1}),
				),
			});
		expect(sigmaOf(points(1))).toBeCloseTo(Math.hypot(0.5, 0.35), 9);
		expect(sigmaOf(points(3))).toBeCloseTo(Math.hypot(0.5 / Math.sqrt(3), 0.25), 2);
		expect(sigmaOf(points(5))).toBeLessThan(sigmaOf(points(3)));
	});

	test('of a speaker unlike the first one the ± is wider', () => {
		const meter = [level('FL', 75), level('FR', 75)];
		const profile = emptyRoom({
			channels: [
				{id: 'FL', speaker: {lowLimitHertz: 45}},
				{id: 'FR', speaker: {lowLimitHertz: 80}},
			],
			meter,
		});
		expect(sigmaOf(profile)).toBeCloseTo(Math.hypot(0.5, 0.35), 9);
		expect(channel(profile, 'FR').trimDb!.sigma).toBeCloseTo(Math.hypot(0.5, 0.35, 0.3), 9);
	});
});

describe('several seats', () => {
	const seats = [
		{id: 'middle', name: 'sofa middle', reference: true, weight: 1},
		{id: 'side', name: 'sofa side', weight: 3},
	];

	test('the weighted target is the energy mean over seats', () => {
		// 10·lg((10^7 + 3 · 10^8) / 4) = 78.893
		const profile = emptyRoom({
			seats,
			target: {seats: 'weighted'},
			meter: [level('FL', 70), level('FL', 80, {seat: 'side'})],
		});
		expect(channel(profile).level!.decibels).toBeCloseTo(78.893, 3);
		expect(solve(profile).levelSeats).toEqual(['middle', 'side']);
	});

	test('a seat where a channel is missing would favour the others, so it is left out', () => {
		const profile = emptyRoom({
			seats,
			target: {seats: 'weighted'},
			meter: [level('FL', 70), level('FR', 70), level('FL', 80, {seat: 'side'})],
		});
		expect(solve(profile).levelSeats).toEqual(['middle']);
		expect(channel(profile).level!.decibels).toBe(70);
	});

	test('the reference seat alone counts unless told otherwise', () => {
		const profile = emptyRoom({seats, meter: [level('FL', 70), level('FL', 80, {seat: 'side'})]});
		expect(channel(profile).level!.decibels).toBe(70);
	});
});
