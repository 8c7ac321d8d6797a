import fc from 'fast-check';
import {expect, test} from 'vitest';
import {inputsHash} from '../../../source/profile/ask/digest.ts';
import type {Profile} from '../../../source/profile/types.ts';
import {emptyRoom, level, tape} from '../../study/calibration/room.ts';

const measured = emptyRoom({tape: [tape('FL', 3)], meter: [level('FL', 75)]});

test('inputsHash is sixteen hexadecimal digits', () => {
	expect(inputsHash(emptyRoom())).toMatch(/^[\da-f]{16}$/);
});

test('inputsHash stays when nothing that a setting is computed from changes', () => {
	const before = inputsHash(measured);
	const same: Profile[] = [
		structuredClone(measured),
		Object.fromEntries(Object.entries(measured).reverse()) as Profile,
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
