import {expect, test} from 'vitest';
import {settingsSet} from '../../../source/profile/schema/observed.ts';
import {toSettingsSet} from '../../../source/study/calibration/toSettingsSet.ts';
import {solve} from '../../afresh.ts';
import {emptyRoom, level, tape} from './room.ts';

const profile = emptyRoom({
	channels: [{id: 'FL'}, {id: 'LFE1'}],
	subs: [{id: 'sub', name: 'Sub', fedBy: 'LFE1', processorOutput: 'one'}],
	bassProcessor: {
		latencyMs: 5,
		outputs: ['one'],
		delay: {stepMs: 0.1, minimumMs: 0, maximumMs: 30},
		gain: {stepDb: 0.5, minimumDb: -20, maximumDb: 6},
	},
	tape: [tape('FL', 3.432), tape('sub', 3.432)],
	meter: [
		level('FL', 74, {inForce: {masterVolumeDb: -20, channels: {}}}),
		level('sub', 76, {inForce: {masterVolumeDb: -20, channels: {}}}),
	],
});

test('toSettingsSet holds what is dialled in, as computed and as stepped, and passes the schema', () => {
	const set = toSettingsSet(solve(profile), {
		id: 'solved-1',
		decidedAt: '2026-04-18T10:00:00Z',
		inputsHash: '0123456789abcdef',
	});
	expect(settingsSet.parse(set)).toEqual(set);
	expect(set).toMatchObject({
		id: 'solved-1',
		origin: 'solved',
		masterVolumeDb: -20,
		inputsHash: '0123456789abcdef',
		channels: {
			FL: {delayMs: {exact: 5, stepped: 5}, trimDb: {exact: 1, stepped: 1}},
			LFE1: {delayMs: {exact: 0, stepped: 0}, trimDb: {exact: -1, stepped: -1}},
		},
		outputs: {one: {delayMs: {stepped: 0}, gainDb: {stepped: 0}}},
	});
});

test('toSettingsSet of nothing measured holds crossovers only', () => {
	const set = toSettingsSet(solve(emptyRoom()), {id: 'empty'});
	expect(Object.keys(set.channels.FL!)).toEqual(['crossoverHertz']);
	expect(set).not.toHaveProperty('masterVolumeDb');
	expect(set).not.toHaveProperty('outputs');
});

test('a reading taken with the solved set in force, at its target, moves nothing', () => {
	const set = toSettingsSet(solve(profile), {id: 'solved-1'});
	const again = {
		...profile,
		settings: [set],
		meter: [level('FL', 75, {inForce: 'solved-1'}), level('sub', 75, {inForce: 'solved-1'})],
	};
	expect(solve(again).channels.map(({trimDb}) => trimDb!.stepped)).toEqual([1, -1]);
	expect(solve(again).masterVolumeChangeDb).toBeCloseTo(0, 9);
});
