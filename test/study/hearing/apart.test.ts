import {beforeAll, expect, test} from 'vitest';
import {recordedBlend} from '../../../source/study/hearing/apart/recordedBlend.ts';
import {separate} from '../../../source/study/hearing/apart/separate.ts';
import type {HeardPlaying} from '../../../source/study/hearing/heardPlaying.ts';
import {stateAgainst} from '../../../source/study/hearing/heardState.ts';
import {responseFrequencies} from '../../../source/study/hearing/responses.ts';
import {shiftBetween, spotsOf} from '../../../source/study/hearing/spots.ts';
import {hearSamples, onlyPlaying, phone, recorded} from './simulated/hear.ts';
import type {Setup} from './simulated/setup.ts';
import {errorDb, truth} from './simulated/truth.ts';

// A phone at one spot: as it stands, first sub turned, second turned as well, both muted; and 12 cm further on. The receiver's
// bass management plays, so that a channel's sweep holds main and subs.
const base: Setup = {subs: ['sub1', 'sub2'], delayMs: {sub1: 3}};
const gain = 1;
let seed = 0;
function hear(setup: Setup): HeardPlaying {
	seed += 1;
	const {samples} = recorded(setup, {...phone, rateHz: 32_000, gain, seed});
	return onlyPlaying(hearSamples(samples, 32_000));
}

let stands: HeardPlaying;
let firstTurned: HeardPlaying;
let bothTurned: HeardPlaying;
beforeAll(() => {
	stands = hear(base);
	firstTurned = hear({...base, sign: {sub1: -1}});
	bothTurned = hear({...base, sign: {sub1: -1, sub2: -1}});
}, 240_000);

const frequencies = responseFrequencies();

test('what was done to the subs is read from the sound', () => {
	expect(stateAgainst(stands, firstTurned).kind).toBe('partly');
	expect(stateAgainst(stands, bothTurned).kind).toBe('turned');
	expect(stateAgainst(stands, hear({...base, subs: []})).kind).toBe('muted');
	expect(stateAgainst(stands, hear(base)).kind).toBe('as it stands');
});

// In a trial with a recorder of this kind the parts came out within −47 dB of the truth from 40 to 160 Hz; this is held to 40.
test('mains and both subs come apart within −40 dB of the truth, 40 to 160 Hz', () => {
	const {mains, groups} = separate(
		[stands, firstTurned, bothTurned],
		[
			{kind: 'turned', group: 'sub1'},
			{kind: 'turned', group: 'sub2'},
		],
	);
	const silent = {FL: -300, FR: -300};
	for (const channel of ['FL', 'FR'])
		expect(errorDb(mains.get(channel)!, truth({...base, subs: []}, channel, 40, 160, gain))).toBeLessThan(
			-40,
		);
	for (const sub of ['sub1', 'sub2'])
		expect(
			errorDb(groups.get(sub)![0]!.mean, truth({...base, subs: [sub], gainDb: silent}, 'FL', 40, 160, gain)),
		).toBeLessThan(-40);
	// A channel's whole sweep is not its main speaker: taken for it, the error is as large as the speaker itself.
	const whole = stands.lines.find(({channel}) => channel === 'FL')!.response;
	expect(errorDb(whole, truth({...base, subs: []}, 'FL', 40, 160, gain))).toBeGreaterThan(-6);
});

test('the blend by complex sums is one that the simulated room confirms, front by front', () => {
	const {mains, groups} = separate(
		[stands, firstTurned, bothTurned],
		[
			{kind: 'turned', group: 'sub1'},
			{kind: 'turned', group: 'sub2'},
		],
	);
	const steps = Array.from({length: 95}, (_, index) => (index - 47) * 0.2);
	const blend = recordedBlend(
		['FL', 'FR'].map(channel => ({
			channel,
			seat: 'seat1',
			weight: 1,
			crossoverHertz: 80,
			main: mains.get(channel)!,
			groups: ['sub1', 'sub2'].map(sub => groups.get(sub)![0]!.mean),
		})),
		[
			{addableMs: steps, canTurn: true},
			{addableMs: steps, canTurn: true},
		],
		frequencies,
	);
	expect(blend.gainDb).toBeGreaterThan(0.3);
	const [one, other] = blend.changes;
	const changed: Setup = {
		...base,
		delayMs: {sub1: 3 + one!.addedMs, sub2: other!.addedMs},
		sign: {sub1: one!.isTurned ? -1 : 1, sub2: other!.isTurned ? -1 : 1},
	};
	const level = (setup: Setup, channel: string) => {
		const points = truth(setup, channel, 40, 160, gain);
		return (
			points.reduce((sum, {real, imaginary}) => sum + 10 * Math.log10(real ** 2 + imaginary ** 2), 0) /
			points.length
		);
	};
	for (const {channel, gainDb} of blend.fronts) {
		// What was expected comes out: parts are known to −40 dB, so a mean level to a tenth.
		expect(level(changed, channel) - level(base, channel)).toBeCloseTo(gainDb, 1);
		expect(gainDb).toBeGreaterThanOrEqual(-0.1);
	}
});

test('a microphone that moved by 12 cm is at another spot, or its way is told', () => {
	const moved = hear({...base, seat: [2.72, 3.05, 1.1]});
	const shift = shiftBetween(stands, moved)!;
	const spots = spotsOf([stands, firstTurned, moved]);
	expect(spots.length === 2 || shift.movedMetres > 0.03).toBe(true);
	expect(shiftBetween(stands, firstTurned)!.movedMetres).toBeLessThan(0.005);
});

test('recordedBlend refuses no front, and leaves alone what nothing gains', () => {
	const flat = {
		real: new Float64Array(frequencies.length).fill(1),
		imaginary: new Float64Array(frequencies.length),
	};
	expect(() => recordedBlend([], [{addableMs: [0], canTurn: false}], frequencies)).toThrow('got 0 and 1');
	const {changes, gainDb} = recordedBlend(
		[{channel: 'FL', seat: 's', weight: 1, crossoverHertz: 80, main: flat, groups: [flat]}],
		[{addableMs: [-1, 0, 1], canTurn: true}],
		frequencies,
	);
	expect(changes).toEqual([{addedMs: 0, isTurned: false}]);
	expect(gainDb).toBe(0);
});
