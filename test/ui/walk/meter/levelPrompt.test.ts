import {expect, test} from 'vitest';
import type {Profile} from '../../../../source/profile/types.ts';
import {levelPrompt} from '../../../../source/ui/walk/meter/levelPrompt.ts';
import {exampleProfile} from '../dialIn/exampleProfile.ts';

const takenAt = '2026-04-18T10:00:00Z';
const ask = (profile: Profile, hint?: (after: Profile) => string | undefined) =>
	levelPrompt(profile, {
		id: 'test',
		stop: 'meter',
		question: 'Front left',
		explain: 'A test.',
		isOwn: ({source, round}) => source === 'FL' && round === 'first',
		made: () => ({source: 'FL', seat: 'seat1', round: 'first', inForce: 'found'}),
		...(hint ? {hint} : {}),
	});
const taken = (profile: Profile, text: string, correcting?: number): Profile => {
	const answer = ask(profile).take(profile, text, {
		takenAt,
		...(correcting === undefined ? {} : {correcting}),
	});
	if (answer.kind !== 'taken') throw new Error(JSON.stringify(answer));
	return answer.next;
};
const start = exampleProfile();

test('levelPrompt refuses what is no level', () => {
	expect(ask(start).take(start, 'loud', {takenAt}).kind).toBe('no');
});

test('levelPrompt adds a repeat with its time and the kit’s weighting', () => {
	const next = taken(start, '75.0');
	expect(next.meter).toHaveLength(start.meter!.length + 1);
	expect(next.meter!.at(-1)).toMatchObject({source: 'FL', decibels: 75, weighting: 'C', takenAt});
	expect(ask(next).values).toEqual(['75.4', '75.0']);
});

test('levelPrompt corrects a reading in its place', () => {
	const next = taken(start, '74.9', 0);
	expect(next.meter).toHaveLength(start.meter!.length);
	expect(ask(next).values).toEqual(['74.9']);
});

test('levelPrompt sets a reading aside and takes it back in', () => {
	const prompt = ask(start);
	const aside = prompt.setAside!(start, 0);
	expect(ask(aside)).toMatchObject({values: ['75.4 (set aside)'], isAnswered: false});
	expect(ask(ask(aside).setAside!(aside, 0))).toMatchObject({values: ['75.4'], isAnswered: true});
});

test('levelPrompt shows the words that follow from the answer', () => {
	const prompt = ask(start, after => `${after.meter!.length} readings now`);
	expect(prompt.take(start, '75.1', {takenAt})).toMatchObject({kind: 'taken', hint: '6 readings now'});
});
