import {expect, test} from 'vitest';
import {parseProfile} from '../../../../source/profile/file/parse.ts';
import type {Profile, SettingsSet} from '../../../../source/profile/types.ts';
import {solve} from '../../../afresh.ts';
import early from '../cases/subs-read-before-their-delays.json' with {type: 'json'};
import {emptyRoom, level, tape} from '../room.ts';

/** ISO 9613-1 at 20 °C, m/s. */
const speed = 343.2;
const set = (id: string, one: number, two: number, turned = false): SettingsSet => ({
	id,
	origin: 'found',
	channels: {LFE1: {delayMs: {stepped: 0}}},
	outputs: {one: {delayMs: {stepped: one}}, two: {delayMs: {stepped: two}, polarityInverted: turned}},
});

/** Two subs of 75 dB each, the second 4 ms farther; read together under the sets named, with these levels. */
function read(...together: ReadonlyArray<readonly [inForce: string, decibels: number]>): Profile {
	return emptyRoom({
		channels: [{id: 'FL'}, {id: 'LFE1'}],
		subs: [
			{id: 'sub1', name: 'Front sub', fedBy: 'LFE1', processorOutput: 'one'},
			{id: 'sub2', name: 'Back sub', fedBy: 'LFE1', processorOutput: 'two'},
		],
		bassProcessor: {
			latencyMs: 0,
			outputs: ['one', 'two'],
			delay: {stepMs: 0.1, minimumMs: 0, maximumMs: 30},
			gain: {stepDb: 0.5, minimumDb: -20, maximumDb: 6},
		},
		settings: [set('zero', 0, 0), set('aligned', 4, 0), set('later', 4, 0), set('turned', 4, 0, true)],
		tape: [tape('FL', 3), tape('sub1', 2), tape('sub2', 2 + (speed * 4) / 1000)],
		meter: [
			level('FL', 75),
			level('sub1', 75, {inForce: 'zero'}),
			level('sub2', 75, {inForce: 'zero'}),
			...together.map(([inForce, decibels]) => level(['sub1', 'sub2'], decibels, {inForce})),
		],
	});
}

/** What receiver and processor together do to each sub, as computed. */
function exactGains(profile: Profile): number[] {
	const {channels, outputs} = solve(profile);
	const trim = channels.find(({id}) => id === 'LFE1')!.trimDb!.stepped;
	return outputs.map(({gainDb}) => trim + gainDb!.exact);
}

const codes = (profile: Profile) => solve(profile).remarks.map(({code}) => code);
/** Two equal subs in phase make 20·lg 2 above one, so that each comes down by as much. */
const inPhaseDb = -20 * Math.log10(2);

test('a reading under other delays than will stand says nothing: in phase is assumed, said, and a reading asked for', () => {
	for (const decibels of [70, 76, 80]) {
		const profile = read(['zero', decibels]);
		for (const gain of exactGains(profile)) expect(gain).toBeCloseTo(inPhaseDb, 2);
		expect(codes(profile)).toContain('coherent-sum-assumed');
	}
});

test('a reading under the delays that will stand counts', () => {
	const profile = read(['zero', 70], ['aligned', 79.5]);
	// 1.52 dB less than in phase: each may stay that much higher.
	for (const gain of exactGains(profile)) expect(gain).toBeCloseTo(inPhaseDb + (75 - inPhaseDb - 79.5), 2);
	expect(codes(profile)).not.toContain('coherent-sum-assumed');
});

test('the newest replaces the older ones, and repeats of it are averaged', () => {
	const profile = read(['aligned', 77], ['later', 79.5], ['later', 79.5]);
	for (const gain of exactGains(profile)) expect(gain).toBeCloseTo(inPhaseDb + (75 - inPhaseDb - 79.5), 2);
});

test('a reading with one of them turned does not count', () => {
	expect(codes(read(['turned', 62]))).toContain('coherent-sum-assumed');
});

test('subs 5.5 ms apart that were read together before their delays come out at the target once in phase', () => {
	const parsed = parseProfile(JSON.stringify(early), 'case');
	if (!parsed.ok) throw new Error('the case does not parse');
	const {channels, outputs} = solve(parsed.profile);
	const trim = channels.find(({id}) => id === 'LFE1')!.trimDb!.stepped;
	// Both read 72 dB alone; in phase they make 6.02 dB more. Half a step of 0.5 dB for the receiver, and for the processor.
	const each = outputs.map(({gainDb}) => 72 + trim + gainDb!.stepped);
	const together = 20 * Math.log10(each.reduce((sum, decibels) => sum + 10 ** (decibels / 20), 0));
	expect(Math.abs(together - 75)).toBeLessThanOrEqual(0.25 + 1e-9);
});
