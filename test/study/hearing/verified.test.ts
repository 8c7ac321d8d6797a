import {expect, test} from 'vitest';
import type {Profile, RecordedResponse, Recording} from '../../../source/profile/types.ts';
import {blendText} from '../../../source/report/bass/blend.ts';
import {recordedStateLines} from '../../../source/report/bass/recordedState.ts';
import {largeLines} from '../../../source/report/largeLines.ts';
import {recordedSentence} from '../../../source/report/said/recorded.ts';
import {blend} from '../../../source/study/calibration/blend/blend.ts';
import {keptPoints} from '../../../source/study/hearing/keepRound.ts';
import {profileBlend} from '../../../source/study/hearing/profileBlend.ts';
import {recordedState} from '../../../source/study/hearing/recordedState.ts';
import {responseFrequencies} from '../../../source/study/hearing/responses.ts';
import {recordedLines} from '../../../source/ui/walk/bass/recorded.ts';
import {blendInputs} from '../../afresh.ts';
import {eveningProfile} from './simulated/evening.ts';

const evening = eveningProfile();
const seat = evening.seats[0]!.id;
const [now] = evening.settings!;
const fronts = ['FL', 'FR'];
const delayed = (ms: number, sub: Partial<NonNullable<typeof now>['channels'][string & 'LFE1']> = {}) => ({
	...now!,
	id: `later ${ms}`,
	channels: {...now!.channels, LFE1: {...now!.channels.LFE1!, delayMs: {stepped: ms}, ...sub}},
});

/** A response that is flat at a level, as late as said. */
function points(levelDb: number, lateMs = 0): RecordedResponse['points'] {
	const frequencies = responseFrequencies();
	const size = 10 ** (levelDb / 20);
	const real = frequencies.map(hertz => size * Math.cos((2 * Math.PI * hertz * lateMs) / 1000));
	const imaginary = frequencies.map(hertz => -size * Math.sin((2 * Math.PI * hertz * lateMs) / 1000));
	return keptPoints({real, imaginary}, 300);
}

const playing = (id: string, inForce: string, more: Partial<Recording> = {}): Recording => ({
	id,
	file: `${id}.wav`,
	sha256: id,
	atSeconds: 0,
	seat,
	round: 'first',
	inForce,
	clockPpm: 0,
	...more,
});

/** Everything that sounds with a front: its bass so much above the middle. */
const all = (recording: string, bassDb: number): RecordedResponse[] =>
	fronts.map(source => ({
		source,
		seat,
		recording,
		sha256: '',
		part: 'all',
		levelDb: -30,
		points: points(bassDb - 30),
	}));
/** Speakers and sub by themselves: the sub comes 6 ms early, half a period at 80 Hz. */
const parts = (recording: string, subMs = -6): RecordedResponse[] => [
	...fronts.map(
		(source): RecordedResponse => ({source, seat, recording, sha256: '', part: 'main', points: points(-30)}),
	),
	{source: 'sub1', seat, recording, sha256: '', part: 'subs', points: points(-30, subMs)},
];

/** A blend found in r1 that asks for the sub 6 ms later. */
const asked: Partial<Recording> = {
	blend: {groups: [{subs: ['sub1'], addedMs: 6, isTurned: false}], gainDb: 3},
};

/** Then 6 ms more dialled in, and one more playing whose bass changed by so much; with parts against their sum, which has a hole. */
function triedWith(changeDb: number, by?: 'lfe'): Profile {
	return {
		...evening,
		settings: [now!, delayed(6)],
		recordings: [
			playing('r1', 'now', {...asked, ...(by && {apartBy: by})}),
			playing('r2', 'later 6', by && {apartBy: by}),
		],
		responses: [
			...all('r1', 0),
			...(by ? parts('r1') : []),
			...all('r2', changeDb),
			...(by ? parts('r2', -1) : []),
		],
	};
}

test('what one more playing hears as better is kept', () => {
	const state = recordedState(triedWith(2));
	expect(state).toMatchObject({kind: 'kept', old: []});
	expect(state.kind === 'kept' && state.verdict.gainDb).toBeCloseTo(2, 1);
});

test('what it hears as worse is put back, with the old entries large in the app and named by the commands', () => {
	const profile = triedWith(-1);
	const state = recordedState(profile);
	expect(state).toMatchObject({
		kind: 'put back',
		old: [{box: 'receiver', about: 'LFE1', what: 'delay', from: 0}],
	});
	const page = recordedLines(profile, 80, false).map(({text}) => text);
	expect(page.join('\n')).toContain('Tried and put back');
	for (const line of largeLines('0.0 ms', 76)!) expect(page).toContain(`    ${line}`);
	// Nobody can say whether the entries stand: nothing was told apart before.
	expect(state).not.toHaveProperty('notAsEnteredDb');
	// For a screen reader the value is a word.
	expect(
		recordedLines(profile, 80, true)
			.map(({text}) => text)
			.join('\n'),
	).toContain('delay 0.0 ms');
	const told = blendText(profile, blend(blendInputs(profile)), 80, state);
	expect(told).toContain('Type the old entries in again:');
	expect(told).toMatch(/> receiver, Low frequency effects.*: delay 0\.0 ms/);
	expect(recordedStateLines(profile, {kind: 'none'}, 80)).toEqual([]);
});

test('bass that is far from what the entries should make is told as entries to look at first', () => {
	const forgotten = recordedState(triedWith(-12, 'lfe'));
	expect(forgotten.kind === 'put back' && forgotten.notAsEnteredDb).toBeGreaterThan(6);
	expect(recordedSentence(evening, forgotten)).toContain('really stand in the boxes');
});

test('with the old entries back in the boxes a further playing is no verdict on the blend', () => {
	const tried = triedWith(-1);
	const profile: Profile = {
		...tried,
		settings: [...tried.settings!, {...now!, id: 'back'}],
		recordings: [...tried.recordings!, playing('r3', 'back')],
		responses: [...tried.responses!, ...all('r3', 0)],
	};
	expect(recordedState(profile)).toMatchObject({kind: 'put back', old: []});
});

test('a sub that no box turns is turned back at its own switch', () => {
	const tried = triedWith(-1);
	const turned = {groups: [{subs: ['sub1'], addedMs: 0, isTurned: true}], gainDb: 3};
	const profile: Profile = {
		...tried,
		receiver: {...tried.receiver!, invertsSubs: false},
		settings: [now!, {...now!, id: 'later 6'}],
		recordings: [{...tried.recordings![0]!, blend: turned}, tried.recordings![1]!],
	};
	expect(recordedState(profile)).toMatchObject({
		kind: 'put back',
		old: [{box: 'sub', about: 'sub1', what: 'polarity'}],
	});
});

test('one playing that verifies asks for nothing new, and after it was put back one playing alone is not asked again', () => {
	const better = triedWith(12, 'lfe');
	expect(profileBlend({...better, recordings: better.recordings!.slice(0, 1)})).toMatchObject({by: 'lfe'});
	expect(profileBlend(better)).toBeUndefined();
	const worse = triedWith(-12, 'lfe');
	const again: Profile = {
		...worse,
		settings: [...worse.settings!, {...now!, id: 'back'}],
		recordings: [...worse.recordings!, playing('r3', 'back', {apartBy: 'lfe'})],
		responses: [...worse.responses!, ...all('r3', 0), ...parts('r3')],
	};
	expect(profileBlend(again)).toBeUndefined();
	// With a change between playings it is asked once more.
	const changed = {...again, recordings: [...worse.recordings!, playing('r3', 'back', {apartBy: 'change'})]};
	expect(profileBlend(changed)).toMatchObject({by: 'change'});
});

test('a playing with a change stands before one without in the same settings', () => {
	const profile: Profile = {
		...evening,
		recordings: [playing('r1', 'now', {apartBy: 'change'}), playing('r2', 'now', {apartBy: 'lfe'})],
		responses: [...all('r1', 0), ...parts('r1'), ...all('r2', 0), ...parts('r2')],
	};
	expect(profileBlend(profile)).toMatchObject({by: 'change', recording: 'r1'});
});
