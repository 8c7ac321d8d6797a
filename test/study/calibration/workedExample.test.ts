import {expect, test} from 'vitest';
import type {ChannelId, Profile} from '../../../source/profile/types.ts';
import {solve} from '../../afresh.ts';
import {emptyRoom, level, tape} from './room.ts';
import {sentence} from './sentence.ts';

/*
A 7.1 in feet and inches, worked by hand.

Speed of sound: nothing known but 20 °C, so ISO 9613-1 gives 343.2 m/s: 0.3432 m a millisecond.

	       tape        inches   metres    / 0.3432 = ms   + latency   = arrival
	FL     9' 4 1/2"   112.5    2.8575     8.3260                      8.3260
	FR     9' 5"       113      2.8702     8.3630                      8.3630
	FC     8' 11"      107      2.7178     7.9190                      7.9190
	SiL    6' 2"        74      1.8796     5.4767                      5.4767
	SiR    6' 3 1/2"    75.5    1.9177     5.5877                      5.5877
	BL     6' 8"        80      2.0320     5.9207                      5.9207
	BR     6' 7"        79      2.0066     5.8467                      5.8467
	sub    11' 2"      134      3.4036     9.9172        4 ms         13.9172
*/
const inches = {FL: 112.5, FR: 113, FC: 107, SiL: 74, SiR: 75.5, BL: 80, BR: 79, sub: 134};

function room(timing: NonNullable<Profile['receiver']>['timing']): Profile {
	const base = emptyRoom();
	return emptyRoom({
		lengthUnit: 'ft-in',
		channels: [
			...(['FL', 'FR', 'FC', 'SiL', 'SiR', 'BL', 'BR'] as const).map(id => ({id})),
			{id: 'LFE1' as const},
		],
		subs: [{id: 'sub', name: 'Sub', fedBy: 'LFE1', latencyMs: 4}],
		receiver: {...base.receiver!, timing},
		tape: Object.entries(inches).map(([end, length]) => tape(end, length * 0.0254)),
		meter: [
			level('FL', 73.6, {weighting: 'C'}),
			level('FL', 73.9, {weighting: 'C'}),
			level('FR', 74.8, {weighting: 'C'}),
			level('FC', 76.1, {weighting: 'C'}),
			level('SiL', 78.3, {weighting: 'C'}),
			level('SiR', 77.9, {weighting: 'C'}),
			level('BL', 71.2, {weighting: 'C'}),
			level('BR', 70.6, {weighting: 'C'}),
			level('sub', 77, {weighting: 'C'}),
			level('background', 45, {weighting: 'C'}),
		],
	});
}

const byChannel = <Value>(
	profile: Profile,
	value: (channel: ReturnType<typeof solve>['channels'][number]) => Value,
) =>
	Object.fromEntries(solve(profile).channels.map(channel => [channel.id, value(channel)])) as Record<
		ChannelId,
		Value
	>;

test('a receiver that takes delays in half milliseconds', () => {
	// Latest arrival 13.9172 less each: FL 5.5912, FR 5.5542, FC 5.9982, SiL 8.4405, SiR 8.3295, BL 7.9965, BR 8.0705.
	// Fractions of 0.5 in order: 0 (LFE1), 0.0542, 0.0705, 0.0912, 0.3295, 0.4405, 0.4965, 0.4982. The largest gap is
	// 0.3295 − 0.0912 = 0.2383, so those up to 0.0912 go down, the others up, and 0.5 − 0.2383 = 0.2617 ms is left.
	const profile = room({kind: 'delay', stepMs: 0.5, minimumMs: 0, maximumMs: 20});
	const exact = byChannel(profile, channel => channel.timing!.exact);
	const hand = {
		FL: 5.5912,
		FR: 5.5542,
		FC: 5.9982,
		SiL: 8.4405,
		SiR: 8.3295,
		BL: 7.9965,
		BR: 8.0705,
		LFE1: 0,
	};
	for (const [id, delayMs] of Object.entries(hand)) expect(exact[id as ChannelId]).toBeCloseTo(delayMs, 3);
	expect(byChannel(profile, channel => channel.timing!.stepped)).toEqual({
		FL: 5.5,
		FR: 5.5,
		FC: 6,
		SiL: 8.5,
		SiR: 8.5,
		BL: 8,
		BR: 8,
		LFE1: 0,
	});
	expect(solve(profile).worstTimingErrorMs).toBeCloseTo(0.2617, 3);
});

test('a receiver that takes distances in whole feet, and 343 m/s of its own', () => {
	// Arrival · 0.343 / 0.3048 ft: FL 9.3695, FR 9.4111, FC 8.9115, SiL 6.1631, SiR 6.2880, BL 6.6627, BR 6.5795,
	// LFE1 15.6614. Fractions in order: 0.1631, 0.2880, 0.3695, 0.4111, 0.5795, 0.6614, 0.6627, 0.9115; the largest gap
	// is 1.1631 − 0.9115 = 0.2516 across the whole foot, so all go up together (0.4627 ft on average; down would be
	// 0.5373) and 0.7484 ft is left. Rounded one by one it would be 0.4111 + 0.4205 = 0.8316 ft.
	const profile = room({
		kind: 'distance',
		shownIn: 'ft',
		stepMetres: 0.3048,
		minimumMetres: 0,
		maximumMetres: 18.288,
	});
	const feet = byChannel(profile, channel => channel.timing!.stepped / 0.3048);
	const hand = {FL: 10, FR: 10, FC: 9, SiL: 7, SiR: 7, BL: 7, BR: 7, LFE1: 16};
	for (const [id, entry] of Object.entries(hand)) expect(feet[id as ChannelId]).toBeCloseTo(entry, 9);
	// 0.7484 ft at 343 m/s: 0.7484 · 0.3048 / 0.343 = 0.6651 ms.
	expect(solve(profile).worstTimingErrorMs).toBeCloseTo(0.6651, 3);
	expect(byChannel(profile, channel => channel.timing!.exact).FL / 0.3048).toBeCloseTo(9.3695, 3);
});

test('trims in half decibels', () => {
	// C reads 0.0524 dB low on pink 355–2818 Hz and 1.2284 dB low on 28.2–112.2 Hz (weightingBands.json, scipy); the background
	// is 25 dB below and left out.
	// FL: energy mean 73.6 + 10·lg((1 + 10^0.03) / 2) = 73.7526, corrected 73.8050; 75 − 73.8050 = +1.1950.
	// FR +0.1476, FC −1.1524, SiL −3.3524, SiR −2.9524, BL +3.7476, BR +4.3476, sub 75 − 78.2284 = −3.2284.
	// Fractions of 0.5 in order: 0.0476, 0.1476, 0.1476, 0.1950, 0.2476, 0.2716, 0.3476, 0.3476; the largest gap is
	// 0.5476 − 0.3476 = 0.2000 across the step, so all go down together, by (0.0476 + 0.3476) / 2 = 0.1976 in the
	// middle, which the master volume gives back; 0.3000 dB is left. One by one it would be 0.4760 dB.
	const profile = room({kind: 'delay', stepMs: 0.5, minimumMs: 0, maximumMs: 20});
	const exact = byChannel(profile, channel => channel.trimDb!.exact);
	const hand = {
		FL: 1.195,
		FR: 0.1476,
		FC: -1.1524,
		SiL: -3.3524,
		SiR: -2.9524,
		BL: 3.7476,
		BR: 4.3476,
		LFE1: -3.2284,
	};
	for (const [id, trimDb] of Object.entries(hand)) expect(exact[id as ChannelId]).toBeCloseTo(trimDb, 3);
	expect(byChannel(profile, channel => channel.trimDb!.stepped)).toEqual({
		FL: 1,
		FR: 0,
		FC: -1.5,
		SiL: -3.5,
		SiR: -3,
		BL: 3.5,
		BR: 4,
		LFE1: -3.5,
	});
	const solution = solve(profile);
	expect(solution.worstLevelErrorDb).toBeCloseTo(0.3, 3);
	expect(solution.masterVolumeChangeDb).toBeCloseTo(0.1976, 3);
});

test('sentences speak in feet and inches', () => {
	const profile = room({kind: 'delay', stepMs: 0.5, minimumMs: 0, maximumMs: 20});
	const fl = solve(profile).channels[0]!;
	const reason = fl.remarks.find(({code}) => code === 'timing-reason')!;
	expect(sentence(reason, profile)).toBe(
		'Front left: 9′ 4 1/2″ at 343.2 m/s make 8.33 ms; Sub comes last after 13.92 ms, so 5.59 ms, entered as 5.50 ms.',
	);
});
