import {expect, test} from 'vitest';
import {receiverDelayMs} from '../../../../source/profile/ask/lines.ts';
import type {Profile} from '../../../../source/profile/types.ts';
import {groupStanding} from '../../../../source/study/calibration/blend/standing.ts';

const profile = {
	channels: [{id: 'FC'}, {id: 'LFE1'}],
	subs: [
		{id: 'sub1', name: 'One', fedBy: 'LFE1', processorOutput: 'A'},
		{id: 'sub2', name: 'Two', fedBy: 'LFE1', processorOutput: 'B'},
	],
	bassProcessor: {outputs: ['A', 'B']},
	receiver: {timing: {kind: 'distance', speedOfSoundMetresPerSecond: 340}},
} as unknown as Profile;
const set = {
	channels: {
		FC: {distanceMetres: {stepped: 3.4}, trimDb: {stepped: -1}, crossoverHertz: 80},
		LFE1: {distanceMetres: {stepped: 1.7}, trimDb: {stepped: 2}, polarityInverted: true},
	},
	outputs: {
		A: {delayMs: {stepped: 1}, gainDb: {stepped: -3}},
		B: {delayMs: {stepped: 3}, gainDb: {stepped: -5}, polarityInverted: true},
	},
};

// A distance d tells the receiver to send early by d/c: 3.4 m at 340 m/s is a delay of −10 ms.
test('receiverDelayMs takes a distance for a delay of minus its time of flight', () => {
	expect(receiverDelayMs(profile, set, 'FC')).toBeCloseTo(-10, 12);
	expect(receiverDelayMs(profile, {channels: {FC: {delayMs: {stepped: 4}}}}, 'FC')).toBe(4);
	expect(receiverDelayMs(profile, {channels: {}}, 'FC')).toBeUndefined();
});

test('groupStanding adds what receiver and processor do to a sub', () => {
	expect(groupStanding(profile, set, ['sub1'])).toMatchObject({delayMs: -4, gainDb: -1, inverted: true});
	// Turned twice is not turned.
	expect(groupStanding(profile, set, ['sub2'])).toMatchObject({delayMs: -2, gainDb: -3, inverted: false});
	expect(groupStanding(profile, set, ['sub1', 'sub2'])).toMatchObject({delayMs: -3, gainDb: -2});
});

test('groupStanding has the same balance when all members move alike, and another when one does', () => {
	const balance = (a: number, b: number) =>
		groupStanding(profile, {...set, outputs: {A: {delayMs: {stepped: a}}, B: {delayMs: {stepped: b}}}}, [
			'sub1',
			'sub2',
		]).balance;
	expect(balance(1, 3)).toBe(balance(4, 6));
	expect(balance(1, 3)).not.toBe(balance(1, 4));
});

test('groupStanding has another balance with another crossover', () => {
	const at = (crossoverHertz: number) =>
		groupStanding(profile, {channels: {FC: {crossoverHertz}}}, ['FC']).balance;
	expect(at(80)).not.toBe(at(100));
});
