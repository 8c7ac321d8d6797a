import {expect, test} from 'vitest';
import {toSettingsSet} from '../../source/calibration/toSettingsSet.ts';
import {settingsSet} from '../../source/profile/schema/observed.ts';
import {exampleSolution} from '../report/exampleSolution.ts';

const rest = {id: 'set1', decidedAt: '2026-04-18T10:00:00Z', inputsHash: 'abc'};

test('toSettingsSet of a solution without results is an empty set', () => {
	const set = toSettingsSet(exampleSolution({channels: [{id: 'FL', remarks: []}], outputs: []}), rest);
	expect(set).toMatchObject({...rest, origin: 'solved'});
	expect(set.channels.FL ?? {}).toEqual({});
	expect(set.channels.FR).toBeUndefined();
});

test('toSettingsSet keeps exact and stepped values of channels and outputs', () => {
	const set = toSettingsSet(exampleSolution({masterVolumeDb: -19.5, lfeLowPassHertz: 120}), rest);
	expect(set.channels.FL).toEqual({
		delayMs: {exact: 3.23, stepped: 3.2},
		trimDb: {exact: -0.4, stepped: -0.5},
	});
	expect(set.outputs?.out1).toEqual({
		delayMs: {exact: 1.21, stepped: 1.2},
		gainDb: {exact: -2.04, stepped: -2},
		polarityInverted: true,
	});
	expect(set).toMatchObject({masterVolumeDb: -19.5, lfeLowPassHertz: 120});
});

test('toSettingsSet puts a distance to enter under distance, not delay', () => {
	const timing = {kind: 'distance', exact: 2.89, stepped: 2.896, sigma: 0.01} as const;
	const set = toSettingsSet(
		exampleSolution({channels: [{id: 'FL', timing, crossoverHertz: 'full', remarks: []}]}),
		rest,
	);
	expect(set.channels.FL).toEqual({distanceMetres: {exact: 2.89, stepped: 2.896}, crossoverHertz: 'full'});
});

test('toSettingsSet gives a set that the schema takes as it is', () => {
	const set = toSettingsSet(exampleSolution({masterVolumeDb: -19.5}), rest);
	expect(settingsSet.parse(set)).toEqual(set);
});
