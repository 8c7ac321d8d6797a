import {expect, test} from 'vitest';
import type {Profile} from '../../../source/profile/types.ts';
import {sceneOf} from '../../../source/ui/walk/sceneOf.ts';
import {exampleProfile} from './dialIn/exampleProfile.ts';

const seat = 'seat1';
// A seat at (2, 3, 1) and a speaker at (0.5, 0.4, 1) in a room of 4 m by 5 m: √(1.5² + 2.6²) = 3.002 m apart.
const tape = [
	{from: seat, to: 'wall:left', metres: 2},
	{from: seat, to: 'wall:front', metres: 3},
	{from: seat, to: 'floor', metres: 1},
	{from: 'FL', to: 'wall:left', metres: 0.5},
	{from: 'FL', to: 'wall:front', metres: 0.4},
	{from: 'FL', to: 'floor', metres: 1},
	{from: 'FL', to: seat, metres: 3.002},
];
const profile: Profile = exampleProfile({
	tape,
	room: {name: 'Attic', widthMetres: 4, lengthMetres: 5, ceiling: {kind: 'flat', heightMetres: 2.4}},
});

test('sceneOf has nothing to place when nothing was taped', () => {
	expect(sceneOf(exampleProfile({tape: []})).points).toEqual([]);
});

test('sceneOf puts things where the tape says', () => {
	const {room, points} = sceneOf(profile);
	expect(room).toMatchObject({widthMetres: 4, lengthMetres: 5});
	const speaker = points.find(({id}) => id === 'FL')!;
	expect(speaker).toMatchObject({kind: 'speaker', label: 'FL'});
	for (const [value, wanted] of [
		[speaker.x, 0.5],
		[speaker.y, 0.4],
		[speaker.z, 1],
	] as const) {
		expect(Math.abs(value - wanted)).toBeLessThan(0.01);
	}
});

test('sceneOf is the same object for as long as no tape reading or thing changes', () => {
	const scene = sceneOf(profile);
	expect(sceneOf({...profile, meter: [], walk: {prompt: 'x'}})).toBe(scene);
	expect(sceneOf({...profile, tape: [...tape]})).not.toBe(scene);
});
