import {expect, test} from 'vitest';
import type {MeterReading, Profile, Recording, SettingsSet} from '../../../../source/profile/types.ts';
import {readingSentences} from '../../../../source/report/said/blend.ts';
import {amongSubsSentence} from '../../../../source/report/said/pair.ts';
import {toSettingsSet} from '../../../../source/study/calibration/toSettingsSet.ts';
import {solve} from '../../../afresh.ts';
import {boxesOf, resultOf, profileWith as roomOfTwo} from './pairRoom.ts';
import {type Truth, walked} from './room.ts';

const taped: Truth = {
	crossoverHertz: 80,
	mainsLimitHertz: 60,
	subLimitHertz: 25,
	arrivalMs: {FL: 9, FC: 8, FR: 9.2, sub1: 13, sub2: 16},
	levelDb: () => 75,
};
/** What no tape tells: both subs are 4 ms later. */
const truth: Truth = {...taped, arrivalMs: {...taped.arrivalMs, sub1: 17, sub2: 20}};

function profileWith(outputs: SettingsSet['outputs'], isOutputTurned = true): Profile {
	const profile = roomOfTwo();
	return {
		...profile,
		settings: profile.settings!.map(set => ({...set, outputs})),
		bassProcessor: {...profile.bassProcessor!, invertsOutputs: isOutputTurned},
	};
}

const plain = {A: {delayMs: {stepped: 0}}, B: {delayMs: {stepped: 0}}};
/** Everything typed in as the solution has it. */
const dialledIn = (profile: Profile, id: string, mistyped: Record<string, number> = {}): Profile => {
	const set = toSettingsSet(solve(profile), {id});
	const outputs = Object.fromEntries(
		Object.entries(set.outputs ?? {}).map(([output, setting]) => [
			output,
			{...setting, delayMs: {stepped: (setting.delayMs?.stepped ?? 0) + (mistyped[output] ?? 0)}},
		]),
	);
	return {...profile, settings: [...profile.settings!, {...set, outputs}]};
};
const walkedWith = (profile: Profile, room = truth) => {
	const set = profile.settings!.at(-1)!;
	return walked(room, boxesOf(set), profile, {inForce: set.id});
};
const between = (profile: Profile) => {
	const {outputs} = toSettingsSet(solve(profile), {id: 'after'});
	return outputs!.A!.delayMs!.stepped - outputs!.B!.delayMs!.stepped;
};

test('one output found turned, because its sub is wired so, stays so and is blended with the rest', () => {
	const profile = dialledIn(profileWith({A: plain.A, B: {...plain.B, polarityInverted: true}}), 'distances');
	expect(resultOf(profile)).toMatchObject({status: 'reading', standsApart: false});
	const done = walkedWith(profile, {...truth, invertedAtBox: ['sub2']});
	expect(resultOf(done).status).toBe('kept');
	const after = toSettingsSet(solve(done), {id: 'after'}).outputs!;
	expect(after.A!.polarityInverted === true).toBe(after.B!.polarityInverted !== true);
});

test('noise read while one sub was mistyped verifies nothing: its delay goes back to what distances give', () => {
	const right = dialledIn(profileWith(plain), 'distances');
	const verified = walkedWith(right);
	expect(resultOf(verified).status).toBe('kept');
	// The same readings, but B stood 5 ms later.
	const [found, distances] = verified.settings!;
	const {A, B} = distances!.outputs!;
	const off = {...B!, delayMs: {stepped: B!.delayMs!.stepped + 5}};
	const mistyped = {...verified, settings: [found!, {...distances!, outputs: {A: A!, B: off}}]};
	const result = resultOf(mistyped);
	expect(result).toMatchObject({standsApart: true, blocks: []});
	expect(result.status).not.toBe('kept');
	expect(result.otherRelation).toHaveLength(35);
	// 16 ms against 13 by the tape; the processor's steps are 0.1 ms.
	expect(Math.abs(between(mistyped) - 3)).toBeLessThanOrEqual(0.1 + 1e-9);
});

test('found turned, verified upright at the same delay: upright is what is to be dialled in', () => {
	const turned = {polarityInverted: true};
	const profile = dialledIn(
		profileWith({A: {...plain.A, ...turned}, B: {...plain.B, ...turned}}),
		'distances',
	);
	const {stands, subs, fronts} = resultOf(profile);
	expect(stands.inverted).toBe(true);
	const noise = (mains: readonly string[], decibels: number, isUpright: boolean): MeterReading => ({
		source: [...mains, ...subs],
		seat: 'sofa',
		decibels,
		weighting: 'Z',
		signal: {kind: 'pink', fromHertz: 40, toHertz: 160},
		round: 'first',
		inForce: 'distances',
		blendPart: 'verification',
		...(isUpright && {invertedSources: [...subs]}),
	});
	const meter = [false, true].flatMap(isUpright =>
		[['FC'], fronts].flatMap(mains => [0, 1].map(() => noise(mains, isUpright ? 78 : 74, isUpright))),
	);
	const verified = {...profile, meter};
	expect(resultOf(verified).status).toBe('kept');
	const {outputs} = toSettingsSet(solve(verified), {id: 'after'});
	expect(outputs!.A!.polarityInverted ?? false).toBe(false);
	expect(outputs!.B!.polarityInverted ?? false).toBe(false);
	// And before anything was verified, what was found stays.
	expect(toSettingsSet(solve(profile), {id: 'before'}).outputs!.A!.polarityInverted).toBe(true);
});

test('tones with one sub only, or one of two turned, are told as not counting', () => {
	const profile = dialledIn(profileWith(plain), 'distances');
	const [first, second, third] = resultOf(profile).blocks[0]!.steps;
	const reading = ({source, seat, signal}: typeof first & object): MeterReading => ({
		source,
		seat,
		decibels: 75,
		weighting: 'Z',
		signal,
		round: 'first',
		inForce: 'distances',
	});
	const meter = [
		{...reading(first!), source: ['FL', 'sub1']},
		{...reading(second!), invertedSources: ['sub2']},
		reading(third!),
	];
	const result = resultOf({...profile, meter});
	expect(result.partly.toSorted()).toEqual([0, 1]);
	expect(result.tones).toHaveLength(1);
	expect(readingSentences({...profile, meter}, result).join(' ')).toMatch(
		/2 readings of tones.*do not count/,
	);
});

test('what the meter leaves alone between subs is said where there are two, and only there', () => {
	const profile = profileWith(plain);
	expect(amongSubsSentence(resultOf(profile))).toMatch(/stays as distances give it.*recording/);
	const one = {...profile, subs: profile.subs!.slice(0, 1)};
	expect(amongSubsSentence(resultOf(one))).toBeUndefined();
	// On one output no recording tells them apart either.
	const joined = {...profile, subs: profile.subs!.map(sub => ({...sub, processorOutput: 'A'}))};
	expect(amongSubsSentence(resultOf(joined))).toMatch(/stays as distances give it\.$/);
});

test('subs that a recording set apart are not sent back to distances', () => {
	const profile = dialledIn(profileWith(plain), 'distances', {B: 2});
	expect(resultOf(profile)).toMatchObject({standsApart: true, isSetByRecording: false});
	const recordings: Recording[] = [
		{
			id: 'r1',
			file: 'evening.wav',
			sha256: 'a'.repeat(64),
			atSeconds: 1,
			seat: 'sofa',
			round: 'first',
			inForce: 'distances',
			clockPpm: 0,
			blend: {
				groups: [
					{subs: ['sub1'], addedMs: 0, isTurned: false},
					{subs: ['sub2'], addedMs: 0, isTurned: false},
				],
				gainDb: 1,
			},
		},
	];
	const recorded = {...profile, recordings};
	const result = resultOf(recorded);
	expect(result).toMatchObject({standsApart: true, isSetByRecording: true, blocks: []});
	expect(readingSentences(recorded, result).join(' ')).not.toMatch(/Dial in what distances give/);
	expect(between(recorded)).toBeCloseTo(between(profile) - 2, 1);
});
