import {expect, test} from 'vitest';
import {parseProfile} from '../../../../source/profile/file/parse.ts';
import type {Profile} from '../../../../source/profile/types.ts';
import {withDecided, withTick} from '../../../../source/ui/walk/dialIn/decide.ts';
import {proofPrompts} from '../../../../source/ui/walk/proof/proof.ts';
import {planOf, provenSet} from '../../../../source/ui/walk/proof/proofOf.ts';
import {exampleProfile} from '../dialIn/exampleProfile.ts';

const taking = {takenAt: '2026-04-19T10:00:00Z'};
const decided = withDecided(exampleProfile(), '2026-04-18T10:00:00Z');
const typedIn = withTick(decided, 'set1', 'FL', true);

/** Answers the question on a channel with what was predicted, and so many decibels more. */
function read(profile: Profile, name: string, aboveDb: number) {
	const item = planOf(profile).find(candidate => candidate.name === name)!;
	const prompt = proofPrompts(profile).find(({id}) => id === `proof:${item.key}`)!;
	return prompt.take(profile, (item.predicted.value + aboveDb).toFixed(1), taking);
}

test('proofPrompts has only a page until something was typed in', () => {
	expect(proofPrompts(exampleProfile()).map(({id}) => id)).toEqual(['proof']);
	expect(proofPrompts(decided).map(({id}) => id)).toEqual(['proof']);
	expect(provenSet(decided)).toBeUndefined();
});

test('proofPrompts asks for every channel with its prediction once the set is in the boxes', () => {
	const prompts = proofPrompts(typedIn);
	expect(prompts.map(({question}) => question)).toEqual(
		expect.arrayContaining(['Front left at Reference seat', 'Subwoofer at Reference seat']),
	);
	for (const {about, caution} of prompts.slice(1)) {
		expect(about).toMatch(/Predicted: \d\d\.\d dB; within \d\.\d dB of that is met\./);
		expect(caution).toMatch(/^Ears: turn the master volume down/);
	}
});

test('the prediction of a channel is its first level with the change of its trim', () => {
	const trim = typedIn.settings!.at(-1)!.channels.FC!.trimDb!.stepped;
	const change = typedIn.settings!.at(-1)!.masterVolumeDb! + 20;
	const centre = planOf(typedIn).find(({name}) => name === 'Front centre')!;
	// 73.4 dB read at trim 0 and master −20 dB; the background of 38 dB takes off 0.001 dB.
	expect(centre.predicted.value).toBeCloseTo(73.4 + trim + change, 1);
});

test('a reading tells residual and verdict at once, and is kept as one of the second round', () => {
	const taken = read(typedIn, 'Front centre', 0.3);
	expect(taken).toMatchObject({
		kind: 'taken',
		hint: expect.stringMatching(/^0\.\d dB above the prediction: met\.$/),
	});
	const next = taken.kind === 'taken' ? taken.next : typedIn;
	expect(next.meter!.at(-1)).toMatchObject({source: 'FC', round: 'proof', inForce: 'set1', seat: 'seat1'});
	expect(parseProfile(JSON.stringify(next), 'test')).toMatchObject({ok: true});
	const again = proofPrompts(next).find(({question}) => question === 'Front centre at Reference seat')!;
	expect(again.isAnswered).toBe(true);
});

/** The profile after answers that are as predicted. */
function after(profile: Profile, ...names: string[]): Profile {
	return names.reduce((now, name) => {
		const taken = read(now, name, 0);
		if (taken.kind !== 'taken') throw new Error(`${name} was not taken`);
		return taken.next;
	}, profile);
}

test('a first reading far from its prediction may be the master volume, and that is said', () => {
	expect(read(typedIn, 'Front centre', -4)).toMatchObject({
		hint: expect.stringMatching(
			/^[34]\.\d dB below the prediction: either the master volume or this channel;/,
		),
	});
});

test('a level far from its prediction is looked at again, and missed by a second look when others are as predicted', () => {
	const others = after(typedIn, 'Front left', 'Front right', 'Subwoofer');
	const once = read(others, 'Front centre', -4);
	expect(once).toMatchObject({kind: 'taken', hint: expect.stringContaining('not clearly within 1.9 dB')});
	if (once.kind !== 'taken') throw new Error('the first look was not taken');
	expect(read(once.next, 'Front centre', -4)).toMatchObject({
		kind: 'taken',
		hint: expect.stringContaining('below the prediction: missed'),
	});
});

test('a reading that only another look decides is open again until further ones settle it', () => {
	const others = after(typedIn, 'Front left', 'Front right', 'Subwoofer');
	const once = read(others, 'Front centre', -2.5);
	if (once.kind !== 'taken') throw new Error('the first look was not taken');
	const centreOf = (profile: Profile) =>
		proofPrompts(profile).find(({question}) => question === 'Front centre at Reference seat')!;
	expect(centreOf(once.next)).toMatchObject({isAnswered: false, values: [expect.any(String)]});
	// Four looks settle a row, wherever they lie.
	const settled = after(once.next, 'Front centre', 'Front centre', 'Front centre');
	expect(centreOf(settled)).toMatchObject({isAnswered: true});
});

test('a level on its prediction is said to be as predicted', () => {
	const others = after(typedIn, 'Front left', 'Front right', 'Subwoofer');
	expect(read(others, 'Front centre', 0)).toMatchObject({
		hint: expect.stringMatching(/^(As predicted|0\.\d dB (below|above) the prediction): met\.$/),
	});
	// Nought is neither above nor below.
	expect(read(others, 'Front centre', 0)).not.toMatchObject({hint: expect.stringContaining('0.0 dB')});
});

test('other seats are left out until the levels are made for them or they were read', () => {
	const profile: Profile = {
		...typedIn,
		seats: [...typedIn.seats, {id: 'seat2', name: 'Seat 2'}],
		meter: [...typedIn.meter!, {...typedIn.meter![0]!, seat: 'seat2'}],
	};
	expect(planOf(profile).every(({seat}) => seat === 'seat1')).toBe(true);
	const proof = {...typedIn.meter![0]!, seat: 'seat2', round: 'proof', inForce: 'set1'} as const;
	const signal = {kind: 'pink', fromHertz: 355, toHertz: 2818} as const;
	const readThere = {...profile, meter: [...profile.meter!, {...proof, signal}]};
	expect(planOf(readThere).some(({seat}) => seat === 'seat2')).toBe(true);
});

test('a tone for one sub alone says by which way it goes, and which subs keep quiet meanwhile', () => {
	const subs = [typedIn.subs![0]!, {...typedIn.subs![0]!, id: 'sub2', name: 'Back sub'}];
	const tone = (round: 'first' | 'proof') => ({
		source: subs[0]!.id,
		seat: 'seat1',
		decibels: 75,
		weighting: 'C' as const,
		signal: {kind: 'tone' as const, hertz: 63},
		round,
		inForce: round === 'first' ? {channels: {}} : 'set1',
	});
	const profile = {...typedIn, subs, meter: [...typedIn.meter!, tone('first')]};
	const asked = proofPrompts(profile).find(({about}) => about?.includes('63 Hz'));
	expect(asked?.about).toContain('Tone of 63 Hz through the LFE channel');
	expect(asked?.about).toContain('Mute Back sub meanwhile.');
});
