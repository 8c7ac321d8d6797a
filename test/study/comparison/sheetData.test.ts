import {expect, test} from 'vitest';
import {inputsHash} from '../../../source/profile/ask/digest.ts';
import type {Profile, SettingsSet} from '../../../source/profile/types.ts';
import {sheetData} from '../../afresh.ts';
import {profile as gear} from '../../report/sheet/scenario.ts';

const tape = [
	{from: 'sofa', to: 'FL', metres: 3},
	{from: 'FL', to: 'wall:left', metres: 0.8},
	{from: 'FL', to: 'wall:front', metres: 0.5},
	{from: 'FL', to: 'floor', metres: 1},
	{from: 'sofa', to: 'wall:left', metres: 2},
	{from: 'sofa', to: 'wall:front', metres: 3.247},
	{from: 'sofa', to: 'floor', metres: 1.1},
];
const profile: Profile = {...gear, room: {name: 'Den', widthMetres: 4, lengthMetres: 5.5}, tape};
const kept: SettingsSet = {id: 'kept', origin: 'solved', channels: {}, inputsHash: inputsHash(profile)};

test('the newest decided set is printed, never one that was merely found', () => {
	const sets: SettingsSet[] = [
		{...kept, id: 'first'},
		{...kept, id: 'second'},
		{...kept, id: 'before', origin: 'found'},
	];
	expect(sheetData({...profile, settings: sets}).set?.id).toBe('second');
	expect(sheetData({...profile, settings: [sets[2]!]}).set).toBeUndefined();
	expect(sheetData(profile).set).toBeUndefined();
});

test('a set is stale once a reading has come after it, and only then', () => {
	expect(sheetData({...profile, settings: [kept]}).isStale).toBe(false);
	const later = {...profile, settings: [kept], tape: [...tape, {from: 'sofa', to: 'FR', metres: 3.1}]};
	expect(sheetData(later).isStale).toBe(true);
});

test('places come from the tape where it ties them to the walls', () => {
	const {standing, plan} = sheetData(profile);
	// Read straight off the wall readings; a millimetre or two of adjustment is the network's due.
	expect(standing.positions.get('FL')?.x).toBeCloseTo(0.8, 2);
	expect(standing.positions.get('FL')?.y).toBeCloseTo(0.5, 2);
	expect(plan?.points.some(({id}) => id === 'FL')).toBe(true);
});

test('without a wall reading no place is claimed and nothing is drawn', () => {
	const {standing, plan} = sheetData({...profile, tape: [tape[0]!]});
	expect(standing.positions.size).toBe(0);
	expect(plan).toBeUndefined();
	expect(standing.seatDistances.get('FL')).toBeCloseTo(3, 6);
});
