import {describe, expect, test} from 'vitest';
import type {Profile, Receiver} from '../../../../source/profile/types.ts';
import {solve} from '../../../afresh.ts';
import {emptyRoom, tape} from '../room.ts';
import {sentence} from '../sentence.ts';

// At 20 °C and ISO 9613-1, sound runs 0.3432 m a millisecond.
const metresIn = (milliseconds: number) => 0.3432 * milliseconds;

function withTiming(timing: Receiver['timing'], changes: Partial<Profile>): Profile {
	const base = emptyRoom();
	return emptyRoom({receiver: {...base.receiver!, timing}, ...changes});
}

const delays = {kind: 'delay', stepMs: 0.1, minimumMs: 0, maximumMs: 20} as const;
const stepped = (profile: Profile) =>
	Object.fromEntries(solve(profile).channels.map(({id, timing}) => [id, timing?.stepped]));
const codes = (profile: Profile) => solve(profile).remarks.map(({code}) => code);

describe('one box', () => {
	test('a channel alone needs no delay', () => {
		const profile = emptyRoom({channels: [{id: 'FC'}], tape: [tape('FC', 2.71)]});
		expect(stepped(profile)).toEqual({FC: 0});
		expect(solve(profile).worstTimingErrorMs).toBe(0);
	});

	test('the nearer speaker waits for the farther one', () => {
		const profile = emptyRoom({tape: [tape('FL', metresIn(9)), tape('FR', metresIn(6.5))]});
		expect(stepped(profile)).toEqual({FL: 0, FR: 2.5});
	});

	test('a channel without a distance is left out, and said so', () => {
		const profile = emptyRoom({tape: [tape('FL', 3)]});
		const fr = solve(profile).channels[1]!;
		expect(fr.timing).toBeUndefined();
		expect(fr.remarks[0]).toMatchObject({kind: 'advice', code: 'distance-missing', about: ['FR']});
	});

	test('a wireless link counts once, as latency of its channel', () => {
		const profile = emptyRoom({
			channels: [{id: 'FL'}, {id: 'FR', latencyMs: 12, latencyFrom: 'wireless link'}],
			tape: [tape('FL', metresIn(8)), tape('FR', metresIn(8))],
		});
		expect(stepped(profile)).toEqual({FL: 12, FR: 0});
		expect(solve(profile).channels[1]!.arrivalMs!.value).toBeCloseTo(20, 9);
		const reason = solve(profile).channels[1]!.remarks.find(({code}) => code === 'timing-reason')!;
		expect(sentence(reason)).toContain('12.0 ms at wireless link');
	});

	test('distances use the speed that the receiver computes with, not the one in the room', () => {
		// 10 ms of flight entered for a receiver with 340 m/s: 3.40 m, although the tape says 3.432 m.
		const timing = {
			kind: 'distance',
			shownIn: 'm',
			stepMetres: 0.01,
			minimumMetres: 0,
			maximumMetres: 20,
			speedOfSoundMetresPerSecond: 340,
		} as const;
		const profile = withTiming(timing, {channels: [{id: 'FC'}], tape: [tape('FC', metresIn(10))]});
		expect(stepped(profile)).toEqual({FC: 3.4});
	});

	test('distances near the true ones are entered, not others that would do as well', () => {
		const timing = {
			kind: 'distance',
			shownIn: 'm',
			stepMetres: 0.03,
			minimumMetres: 0.03,
			maximumMetres: 18,
		} as const;
		const profile = withTiming(timing, {tape: [tape('FL', 3.0), tape('FR', 2.4)]});
		for (const {timing: entry, distance} of solve(profile).channels) {
			expect(Math.abs(entry!.stepped - distance!.metres)).toBeLessThan(0.03);
		}
	});

	test('a receiver that is not described is assumed, and said so', () => {
		const profile = emptyRoom({receiver: undefined, tape: [tape('FL', 3), tape('FR', 2)]});
		expect(stepped(profile)).toEqual({FL: 0, FR: 2.9});
		expect(codes(profile)).toContain('receiver-assumed');
	});
});

describe('limits', () => {
	test('a range that is too short costs the outlier only, and the sentence says how much and what helps', () => {
		// FR, FC and LS arrive within 2 ms of each other, FL 30 ms later through a link. The receiver delays 20 ms at most.
		const profile = emptyRoom({
			channels: [{id: 'FL', latencyMs: 30, latencyFrom: 'wireless link'}, {id: 'FR'}, {id: 'FC'}, {id: 'LS'}],
			tape: [
				tape('FL', metresIn(8)),
				tape('FR', metresIn(8)),
				tape('FC', metresIn(8)),
				tape('LS', metresIn(8)),
			],
		});
		const solution = solve(profile);
		expect(stepped(profile)).toEqual({FL: 0, FR: 20, FC: 20, LS: 20});
		expect(solution.worstTimingErrorMs).toBeCloseTo(10, 9);
		const told = solution.remarks.find(({code}) => code === 'timing-spread-does-not-fit')!;
		expect(told).toMatchObject({kind: 'problem', about: ['FL']});
		expect(sentence(told)).toBe(
			'Front left: the arrivals differ by 30.0 ms; the receiver evens out 20.0 ms. Lost: 10.0 ms. With these settings Front left arrives 10.0 ms late against most others. To fix it: lower the 30.0 ms of latency at wireless link by 10.0 ms, or connect Front left without it.',
		);
	});

	test('without a latency to blame, moving a speaker is the remedy', () => {
		const timing = {kind: 'delay', stepMs: 0.1, minimumMs: 0, maximumMs: 5} as const;
		const profile = withTiming(timing, {tape: [tape('FL', metresIn(20)), tape('FR', metresIn(10))]});
		const [told] = solve(profile).remarks.filter(({code}) => code === 'timing-spread-does-not-fit');
		// 10 ms apart, 5 ms of range: 5 ms lost, which is 1.716 m of way.
		expect(sentence(told!)).toContain('bring Front left 1.72 m nearer');
	});

	test('a spread that just fits is no problem', () => {
		const profile = emptyRoom({tape: [tape('FL', metresIn(28)), tape('FR', metresIn(8))]});
		expect(codes(profile)).not.toContain('timing-spread-does-not-fit');
		expect(stepped(profile)).toEqual({FL: 0, FR: 20});
	});
});

describe('bass processor', () => {
	const bassProcessor = {
		name: 'bass box',
		latencyMs: 5,
		outputs: ['one', 'two'],
		delay: {stepMs: 0.02, minimumMs: 0, maximumMs: 30},
		gain: {stepDb: 0.5, minimumDb: -20, maximumDb: 6},
	};
	const subs = [
		{id: 'sub1', name: 'Front sub', fedBy: 'LFE1', processorOutput: 'one'},
		{id: 'sub2', name: 'Back sub', fedBy: 'LFE1', processorOutput: 'two'},
	] as const;
	const profile = withTiming(delays, {
		channels: [{id: 'FL'}, {id: 'FR'}, {id: 'LFE1'}],
		subs: [...subs],
		bassProcessor,
		tape: [
			tape('FL', metresIn(8)),
			tape('FR', metresIn(8)),
			tape('sub1', metresIn(9)),
			tape('sub2', metresIn(6)),
		],
	});

	test('the processor sets the subs apart, the receiver waits for both, and its latency counts once', () => {
		// Sub arrivals 9 + 5 = 14 and 6 + 5 = 11 ms: output two gets 3 ms; the mains at 8 ms wait 6 ms for 14.
		const solution = solve(profile);
		expect(stepped(profile)).toEqual({FL: 6, FR: 6, LFE1: 0});
		expect(solution.outputs.map(({id, delayMs}) => [id, delayMs!.stepped])).toEqual([
			['one', 0],
			['two', 3],
		]);
		expect(solution.subs.map(({arrivalMs}) => arrivalMs!.value)).toEqual([
			expect.closeTo(14, 9),
			expect.closeTo(11, 9),
		]);
		expect(solution.worstTimingErrorMs).toBeCloseTo(0, 6);
	});

	test('the receiver delays the subs in common where the mains come last', () => {
		// Mains at 25 ms, subs at 14 and 11: the receiver adds 11 to both, the processor 3 to the second.
		const late = {
			...profile,
			tape: profile.tape!.map(reading =>
				'FL' === reading.from || 'FR' === reading.from ? {...reading, metres: metresIn(25)} : reading,
			),
		};
		expect(stepped(late)).toEqual({FL: 0, FR: 0, LFE1: 11});
		expect(solve(late).outputs.map(({delayMs}) => delayMs!.stepped)).toEqual([0, 3]);
	});

	test('the processor takes what the receiver cannot', () => {
		// Mains at 40 ms, first sub at 14: 26 ms to add, of which the receiver has 20; the processor adds 6 and 9.
		const late = {
			...profile,
			tape: profile.tape!.map(reading =>
				'FL' === reading.from || 'FR' === reading.from ? {...reading, metres: metresIn(40)} : reading,
			),
		};
		expect(stepped(late)).toEqual({FL: 0, FR: 0, LFE1: 20});
		expect(solve(late).outputs.map(({delayMs}) => delayMs!.stepped)).toEqual([6, 9]);
		expect(codes(late)).not.toContain('timing-spread-does-not-fit');
	});

	test('with a receiver that takes distances, the LFE entry stands for the latest sub', () => {
		const timing = {
			kind: 'distance',
			shownIn: 'm',
			stepMetres: 0.01,
			minimumMetres: 0,
			maximumMetres: 20,
		} as const;
		const entered = {...profile, receiver: {...profile.receiver!, timing}};
		const solution = solve(entered);
		// 14 ms at the receiver's 343 m/s.
		const lfe = solution.channels.find(({id}) => id === 'LFE1')!;
		expect(lfe.timing!.exact).toBeCloseTo(4.802, 3);
		expect(Math.abs(lfe.timing!.stepped - 4.802)).toBeLessThanOrEqual(0.02);
		expect(solution.outputs.map(({delayMs}) => delayMs!.stepped)).toEqual([
			expect.closeTo(0, 1),
			expect.closeTo(3, 1),
		]);
		expect(solution.worstTimingErrorMs).toBeLessThan(0.03);
	});

	test('two subs on one output cannot be set apart: the middle is used, and said', () => {
		const together = {...profile, subs: subs.map(sub => ({...sub, processorOutput: 'one'}))};
		expect(codes(together)).toContain('subs-share-output');
		// Middle of 14 and 11 is 12.5; the mains at 8 wait 4.5.
		expect(stepped(together)).toEqual({FL: 4.5, FR: 4.5, LFE1: 0});
	});

	test('two subs on two outputs of the receiver are set apart by the receiver', () => {
		const direct = {
			...profile,
			channels: [...profile.channels, {id: 'LFE2' as const}],
			bassProcessor: undefined,
			subs: [
				{id: 'sub1', name: 'Front sub', fedBy: 'LFE1' as const},
				{id: 'sub2', name: 'Back sub', fedBy: 'LFE2' as const},
			],
		};
		expect(stepped(direct)).toEqual({FL: 1, FR: 1, LFE1: 0, LFE2: 3});
	});

	test('an LFE channel without a sub of its own is one', () => {
		const bare = withTiming(delays, {
			channels: [{id: 'FL'}, {id: 'LFE1'}],
			tape: [tape('FL', metresIn(8)), tape('LFE1', metresIn(10))],
		});
		expect(stepped(bare)).toEqual({FL: 2, LFE1: 0});
	});
});
