import {readFileSync} from 'node:fs';
import fc from 'fast-check';
import {expect, test} from 'vitest';
import {inputsHash, isComputedFrom, isStale} from '../../../source/profile/ask/digest.ts';
import {parseProfile} from '../../../source/profile/file/parse.ts';
import type {Profile} from '../../../source/profile/types.ts';
import {lengthUnits} from '../../../source/profile/units/lengthUnit.ts';
import {emptyRoom, level, tape} from '../../study/calibration/room.ts';

const measured = emptyRoom({tape: [tape('FL', 3)], meter: [level('FL', 75)]});

test('inputsHash is its version and sixteen hexadecimal digits', () => {
	expect(inputsHash(emptyRoom())).toMatch(/^2:[\da-f]{16}$/);
});

test('inputsHash stays when nothing that a setting is computed from changes', () => {
	const before = inputsHash(measured);
	const same: Profile[] = [
		structuredClone(measured),
		Object.fromEntries(Object.entries(measured).reverse()) as Profile,
		...lengthUnits.map(lengthUnit => ({...measured, lengthUnit})),
		{...measured, kit: {wireSystem: 'awg'}},
		{...measured, name: 'Other name', note: 'words', date: '2030-01-01', walk: {prompt: 'meter'}},
		{...measured, settings: [{id: 'new', origin: 'solved', channels: {}}]},
		{
			...measured,
			meter: [...measured.meter!, level('FL', 80, {round: 'proof'}), level('FL', 80, {setAside: true})],
		},
		{...measured, meter: [level('FL', 75, {note: 'on the stand', takenAt: '2026-04-18T10:00:00Z'})]},
	];
	for (const profile of same) expect(inputsHash(profile)).toBe(before);
});

test('inputsHash changes with whatever a setting is computed from', () => {
	const different: Profile[] = [
		{...measured, tape: [tape('FL', 3.01)]},
		{...measured, tape: [tape('FR', 3)]},
		{...measured, meter: [level('FL', 75.1)]},
		{...measured, meter: [level('FL', 75, {weighting: 'C'})]},
		{...measured, meter: [level('FL', 75), level('FL', 75)]},
		{...measured, meter: [level('FL', 75), level('FL', 75, {signal: {kind: 'tone', hertz: 80}})]},
		{...measured, air: {temperatureCelsius: 21}},
		{...measured, target: {levelDb: 76}},
		{...measured, channels: [{id: 'FR'}, {id: 'FL'}]},
		{...measured, channels: [{id: 'FL', latencyMs: 1}, {id: 'FR'}]},
		{...measured, kit: {meterOffsetDb: 1}},
		{...measured, receiver: {...measured.receiver!, subOutputs: 2}},
	];
	expect(new Set([measured, ...different].map(inputsHash)).size).toBe(different.length + 1);
});

test('inputsHash changes with a stored set only where a reading refers to it', () => {
	const set = (stepped: number) => ({
		id: 'old',
		origin: 'found' as const,
		channels: {FL: {trimDb: {stepped}}},
	});
	const referring = {...measured, meter: [level('FL', 75, {inForce: 'old'})]};
	expect(inputsHash({...referring, settings: [set(1)]})).not.toBe(
		inputsHash({...referring, settings: [set(2)]}),
	);
	expect(inputsHash({...measured, settings: [set(1)]})).toBe(inputsHash({...measured, settings: [set(2)]}));
});

test('inputsHash tells close distances apart', () => {
	fc.assert(
		fc.property(
			fc.uniqueArray(fc.integer({min: 0, max: 100_000}), {minLength: 100, maxLength: 400}),
			lengths => {
				const hashes = lengths.map(length => inputsHash({...measured, tape: [tape('FL', length / 1000)]}));
				expect(new Set(hashes).size).toBe(lengths.length);
			},
		),
		{seed: 1, numRuns: 20},
	);
});

/** Files as the build wrote them whose digest counted the display unit. */
function older(name: string): Profile {
	const parsed = parseProfile(readFileSync(new URL(`older/${name}.json`, import.meta.url)), name);
	if (!parsed.ok) throw new Error(`${name} cannot be read`);
	return parsed.profile;
}

test.each(['attic-2025', 'attic-2026'])(
	'a set that %s keeps under the older digest stays fresh in every unit',
	name => {
		const profile = older(name);
		for (const lengthUnit of [...lengthUnits, undefined])
			expect(isStale({...profile, lengthUnit})).toBe(false);
		expect(isStale({...profile, tape: profile.tape!.slice(1)})).toBe(true);
		expect(isStale({...profile, kit: {...profile.kit, meterOffsetDb: 1}})).toBe(true);
	},
);

// Written by that build for attic-2026 with each unit in turn, and without one.
test.each([
	'580441bc780343d2',
	'f4a2df495c847a57',
	'4d794e68c2c1871a',
	'a9ef4709f2767807',
	'3bb54e3089151e83',
])('the older digest %s fits, in whatever unit it was made', hash => {
	expect(isComputedFrom({...older('attic-2026'), lengthUnit: 'ft'}, hash)).toBe(true);
	expect(isComputedFrom(older('attic-2025'), hash)).toBe(false);
});

test('a set without a digest was not computed here and is never stale', () => {
	expect(isComputedFrom(measured, undefined)).toBe(true);
	expect(isComputedFrom(measured, 'nonsense')).toBe(false);
	expect(isComputedFrom(measured, inputsHash(measured))).toBe(true);
});
