import {expect, test} from 'vitest';
import type {Profile} from '../../../../source/profile/types.ts';
import {solve} from '../../../afresh.ts';
import {emptyRoom, level} from '../room.ts';

const bassProcessor = {
	latencyMs: 0,
	outputs: ['one', 'two'],
	delay: {stepMs: 0.1, minimumMs: 0, maximumMs: 30},
	gain: {stepDb: 0.5, minimumDb: -20, maximumDb: 6},
};

function twoSubs(changes: Partial<Profile> = {}): Profile {
	return emptyRoom({
		channels: [{id: 'FL'}, {id: 'LFE1'}],
		subs: [
			{id: 'sub1', name: 'Front sub', fedBy: 'LFE1', processorOutput: 'one'},
			{id: 'sub2', name: 'Back sub', fedBy: 'LFE1', processorOutput: 'two'},
		],
		bassProcessor,
		...changes,
	});
}

const settings = (profile: Profile) => {
	const {channels, outputs} = solve(profile);
	return [
		channels.find(({id}) => id === 'LFE1')!.trimDb!.stepped,
		...outputs.map(({gainDb}) => gainDb!.stepped),
	];
};
const total = (profile: Profile) => {
	const [trim, one, two] = settings(profile) as [number, number, number];
	return [trim + one, trim + two];
};
const codes = (profile: Profile) => solve(profile).remarks.map(({code}) => code);

test('two subs are matched to each other and assumed to add up in phase where nobody read them together', () => {
	// Together 75 dB means 75 − 6.02 = 68.98 each: sub1 from 75 by −6.02, sub2 from 73 by −4.02.
	const profile = twoSubs({meter: [level('FL', 75), level('sub1', 75), level('sub2', 73)]});
	const [one, two] = total(profile);
	expect(two! - one!).toBe(2);
	expect(Math.abs(one! + 6.02)).toBeLessThan(0.3);
	expect(codes(profile)).toContain('coherent-sum-assumed');
});

test('the processor only cuts: the sub that needs most gets 0 dB there', () => {
	const [trim, one, two] = settings(
		twoSubs({meter: [level('FL', 75), level('sub1', 75), level('sub2', 73)]}),
	) as [number, number, number];
	expect([trim, one, two]).toEqual([-4, -2, 0]);
});

test('a reading of both says what they really make', () => {
	// Two times 75 in phase would be 81.02; 78 was read, 3.02 less. So each may stay 3.02 higher: 75 − 6.02 + 3.02 = 72.
	const profile = twoSubs({
		meter: [level('FL', 75), level('sub1', 75), level('sub2', 75), level(['sub2', 'sub1'], 78)],
	});
	expect(total(profile)).toEqual([-3, -3]);
	expect(codes(profile)).not.toContain('coherent-sum-assumed');
	expect(codes(profile)).toContain('subs-against-each-other');
});

test('the LFE output named as source stands for the subs it feeds', () => {
	const both = twoSubs({meter: [level('FL', 75), level('sub1', 75), level('sub2', 75), level('LFE1', 78)]});
	expect(total(both)).toEqual([-3, -3]);
});

test('more than in phase is impossible, and said', () => {
	const profile = twoSubs({
		meter: [level('FL', 75), level('sub1', 75), level('sub2', 75), level(['sub1', 'sub2'], 84)],
	});
	expect(codes(profile)).toContain('subs-beyond-coherent');
});

test('subs that were read together only are moved together', () => {
	const profile = twoSubs({meter: [level('FL', 75), level(['sub1', 'sub2'], 80)]});
	expect(total(profile)).toEqual([-5, -5]);
	expect(codes(profile)).toContain('subs-not-matched');
});

test('gains in force of receiver and processor are part of the new ones', () => {
	// Sub 1 read 75 with −3 at the receiver and −2 at the processor; wanted 69.98 of it: −5 − 5.02 … in half decibels.
	const inForce = {channels: {LFE1: {trimDb: {stepped: -3}}}, outputs: {one: {gainDb: {stepped: -2}}}};
	const profile = twoSubs({
		subs: [{id: 'sub1', name: 'Front sub', fedBy: 'LFE1', processorOutput: 'one'}],
		meter: [level('FL', 75), level('sub1', 77, {inForce})],
	});
	// One sub alone: −3 − 2 + 75 − 77 = −7.
	const [trim, one] = settings(profile) as [number, number];
	expect(trim + one).toBe(-7);
});

test('the subs’ own target lies above or below the mains’', () => {
	const profile = twoSubs({
		subs: [{id: 'sub1', name: 'Front sub', fedBy: 'LFE1', processorOutput: 'one'}],
		target: {levelDb: 70, subOffsetDb: 5},
		meter: [level('FL', 70), level('sub1', 70)],
	});
	const [trim, one] = settings(profile) as [number, number];
	expect(trim + one).toBe(5);
});

test('the processor takes the gain that the receiver’s trim has not', () => {
	const profile = twoSubs({
		subs: [{id: 'sub1', name: 'Front sub', fedBy: 'LFE1', processorOutput: 'one'}],
		meter: [level('FL', 75), level('sub1', 60)],
	});
	// +15 dB: 12 at the receiver, 3 at the processor.
	expect(settings(profile)).toEqual([12, 3]);
});

test('what a reading of both lacks is reckoned against the levels that the subs had in it', () => {
	// Read alone at 0 dB: 65 and 77. The set takes 12 dB from the second: 65 each, 71.02 in phase. 69 is read: 2.02 less.
	// To make 75 both must rise by 6 dB from where the set has them.
	const profile = twoSubs({
		settings: [
			{id: 'zero', origin: 'found', channels: {LFE1: {trimDb: {stepped: 0}}}},
			{
				id: 'matched',
				origin: 'solved',
				channels: {LFE1: {trimDb: {stepped: 0}}},
				outputs: {one: {gainDb: {stepped: 0}}, two: {gainDb: {stepped: -12}}},
			},
		],
		meter: [
			level('FL', 75),
			level('sub1', 65, {inForce: 'zero'}),
			level('sub2', 77, {inForce: 'zero'}),
			level(['sub1', 'sub2'], 69, {inForce: 'matched'}),
		],
	});
	const [one, two] = total(profile);
	expect([one, two]).toEqual([6, -6]);
});

test('a sub beyond every entry is turned at its own knob, and moves no other channel', () => {
	// 40 dB too loud: receiver and processor take 32 dB together, 8 are missing.
	const profile = twoSubs({
		subs: [{id: 'sub1', name: 'Front sub', fedBy: 'LFE1', processorOutput: 'one'}],
		meter: [level('FL', 75), level('sub1', 115)],
	});
	const solution = solve(profile);
	expect(solution.channels.find(({id}) => id === 'FL')!.trimDb!.stepped).toBe(0);
	expect(solution.masterVolumeTurnDb).toBe(0);
	const told = solution.remarks.find(({code}) => code === 'sub-far-off')!;
	expect(told).toMatchObject({kind: 'problem', about: ['sub1']});
	expect((told as {facts: {turnDb: number; missingDb: number}}).facts).toEqual({turnDb: -40, missingDb: -8});
	expect(settings(profile)).toEqual([-12, -20]);
});

test('what the master volume makes up for all makes no sub far off', () => {
	const profile = twoSubs({
		subs: [{id: 'sub1', name: 'Front sub', fedBy: 'LFE1', processorOutput: 'one'}],
		meter: [level('FL', 45), level('sub1', 46)],
	});
	expect(codes(profile)).not.toContain('sub-far-off');
	expect(solve(profile).masterVolumeTurnDb).toBeGreaterThan(25);
});
