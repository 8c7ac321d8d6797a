import {beforeAll, expect, test} from 'vitest';
import {roundSheetLines, touchWords} from '../../../source/report/hearing/roundSheet.ts';
import {sentenceOf} from '../../../source/report/said/said.ts';
import {sayIn} from '../../../source/report/said/say.ts';
import type {HeardPlaying} from '../../../source/study/hearing/heardPlaying.ts';
import {seatRounds} from '../../../source/study/hearing/seatRound.ts';
import {understand} from '../../../source/study/hearing/understand.ts';
import {plannedPlayings, subGroups} from '../../../source/study/hearing/visit.ts';
import {roundFile} from '../../../source/study/playing/roundFile.ts';
import {eveningProfile} from './simulated/evening.ts';
import {hearSamples, onlyPlaying, phone, recorded} from './simulated/hear.ts';
import type {Setup} from './simulated/setup.ts';
import {errorDb, truth} from './simulated/truth.ts';

// A receiver that cannot turn a sub: its delay is moved by a third of a period, 4.2 ms at 80 Hz.
const evening = eveningProfile();
const profile = {...evening, receiver: {...evening.receiver!, invertsSubs: false}};
const [group] = subGroups(profile);
const addedMs = group!.moved!.addedMs;

const base: Setup = {size: 'bass', channels: ['FL', 'FR'], delayMs: {sub1: 2}};
const gain = 1;
let seed = 70;
function hear(setup: Setup, gainDb = 0): HeardPlaying {
	seed += 1;
	const recorder = {...phone, rateHz: 32_000, gain: gain * 10 ** (gainDb / 20), seed};
	return onlyPlaying(hearSamples(recorded(setup, recorder).samples, 32_000));
}

let stands: HeardPlaying;
let moved: HeardPlaying;
let movedLess: HeardPlaying;
let mutedLouder: HeardPlaying;
beforeAll(() => {
	stands = hear(base);
	moved = hear({...base, delayMs: {sub1: 2 + addedMs}});
	movedLess = hear({...base, delayMs: {sub1: 4}});
	mutedLouder = hear({...base, subs: []}, 2);
}, 240_000);

const understood = (...playings: readonly HeardPlaying[]) =>
	understand(
		profile,
		playings.map(playing => ({playing, file: 'a.wav', sha256: 'a'})),
		new Map(),
		{round: 'first', takenAt: '2026-04-18T20:00:00Z'},
	);

test('a receiver that cannot turn subs moves them by a third of a period in its own steps, and the sheet says what to enter', () => {
	expect(group).toMatchObject({box: 'receiver', change: 'delayed'});
	const {stepMs} = profile.receiver.timing as {stepMs: number};
	expect(Math.abs(addedMs - 1000 / (3 * 80))).toBeLessThanOrEqual(stepMs / 2 + 1e-9);
	const [, second] = plannedPlayings(['seat1'], [group!]);
	expect(touchWords(profile, second!)).toMatch(
		/^set the delay of Subwoofer to 4\.\d+ ms instead of 0\.0 ms, in the receiver/,
	);
	expect(touchWords(profile, {...second!, isBack: true})).toBe(
		'set the delay of Subwoofer back to 0.0 ms, in the receiver',
	);
	const file = roundFile(profile, 'two');
	const visit = {file, loop: 'loop.wav', groups: [group!], playings: plannedPlayings(['seat1'], [group!])};
	expect(roundSheetLines(profile, visit, undefined, 200).join('\n')).toContain('4.2 ms later');
});

// Dividing by 1 − e^(−jωτ) raises the noise to twice at 27 Hz and lowers it to half at 120: held to 35 dB from 40 to 160 Hz.
test('what was moved is read from the sound, and speakers and sub come apart by it', () => {
	const {rows, rounds, kept} = understood(stands, moved);
	expect(rows[1]!.state).toMatchObject({kind: 'delayed', isTurned: false});
	expect((rows[1]!.state as {ms: number}).ms).toBeCloseTo(addedMs, 0);
	const {apart} = rounds[0]!;
	const silent = {FL: -300, FR: -300};
	for (const channel of ['FL', 'FR']) {
		const main = truth({...base, subs: []}, channel, 40, 160, gain);
		expect(errorDb(apart!.mains.get(channel)!, main)).toBeLessThan(-35);
		// The whole sweep taken for the speaker alone is as wrong as the speaker is loud: bass management played.
		const whole = stands.lines.find(line => line.channel === channel)!.response;
		expect(errorDb(whole, main)).toBeGreaterThan(-6);
	}

	expect(
		errorDb(apart!.groups.get('sub1')![0]!.mean, truth({...base, gainDb: silent}, 'FL', 40, 160, gain)),
	).toBeLessThan(-35);
	expect(kept.recordings[1]!.state).toEqual({delayed: ['sub1'], addedDelayMs: addedMs});
});

test('another delay than was asked for is named, and nothing is told apart by it', () => {
	const {rows, rounds} = understood(stands, movedLess);
	const [other] = rows[1]!.findings;
	expect(other).toMatchObject({code: 'heard-delay-other', facts: {askedMs: addedMs}});
	expect((other!.facts as {ms: number}).ms).toBeCloseTo(2, 0);
	expect(sentenceOf(other!, sayIn(profile))).toContain('not by the 4.2 ms asked for');
	expect(rounds[0]!.apart).toBeUndefined();
});

test('muting in place of what was asked for is read from the sound and does as well; a changed level is named and taken off', () => {
	const {rows, rounds, kept} = understood(stands, mutedLouder);
	expect(rows[1]!.state.kind).toBe('muted');
	expect(kept.recordings[1]!.state).toEqual({muted: ['sub1']});
	const [changed] = rows[1]!.findings;
	expect(changed!.code).toBe('heard-level-changed');
	expect((changed!.facts as {changeDb: number}).changeDb).toBeCloseTo(2, 1);
	expect(sentenceOf(changed!, sayIn(profile))).toContain('2.0 dB louder than in the playing before');
	const main = truth({...base, subs: []}, 'FL', 40, 160, gain);
	expect(errorDb(rounds[0]!.apart!.mains.get('FL')!, main)).toBeLessThan(-35);
});

test('a level that changed by less than 1 dB is not named', () => {
	const softer = hear({...base, delayMs: {sub1: 2 + addedMs}}, -0.7);
	const {rows} = seatRounds([stands, softer], ['seat1'], [group!]);
	expect(rows[1]!.findings).toEqual([]);
	expect(rows[1]!.isUsed).toBe(true);
});
