import {expect, test} from 'vitest';
import type {Profile} from '../../../source/profile/types.ts';
import {actionSentence, plainNames} from '../../../source/report/bass/names.ts';

const profile = {
	seats: [],
	channels: [{id: 'FC'}],
	subs: [{id: 'sub1', name: 'Sub at the back', fedBy: 'LFE1'}],
	receiver: {timing: {kind: 'distance', shownIn: 'ft', stepMetres: 0.03048}},
} as unknown as Profile;

test('plainNames joins names with “and” before the last', () => {
	expect(plainNames(profile, [])).toBe('');
	expect(plainNames(profile, ['FC'])).toBe('Front centre');
	expect(plainNames(profile, ['FC', 'FL', 'sub1'])).toBe('Front centre, Front left and Sub at the back');
});

test('actionSentence shows a distance in the unit of the receiver', () => {
	const action = {
		box: 'receiver',
		about: 'LFE1',
		what: 'distance',
		from: 3.048,
		to: 2.7432,
		change: -0.3048,
	} as const;
	expect(actionSentence(profile, action)).toBe(
		'Receiver, Low frequency effects 1: distance from 10.0 ft to 9.0 ft.',
	);
});

test('actionSentence tells a change alone where what stands is not known', () => {
	expect(actionSentence(profile, {box: 'processor', about: 'A', what: 'delay', change: -1.25})).toBe(
		'Bass processor, output A: delay 1.25 ms less than what stands.',
	);
});

test('actionSentence names the sub itself where only it can invert the polarity', () => {
	expect(actionSentence(profile, {box: 'sub', about: 'sub1', what: 'polarity'})).toBe(
		'At Sub at the back itself: invert the polarity.',
	);
});
