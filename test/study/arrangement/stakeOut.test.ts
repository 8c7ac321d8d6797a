import {expect, test} from 'vitest';
import {newProfile} from '../../../source/profile/generic/newProfile.ts';
import type {Profile} from '../../../source/profile/types.ts';
import {stakePoints} from '../../../source/study/arrangement/stakeOut.ts';

const made = newProfile({
	name: 'Planned',
	date: '2026-04-18',
	layout: '5.1',
	lengthUnit: 'm',
	receiver: 'fine-metric',
	seats: 1,
});
const room = {widthMetres: 4, lengthMetres: 6};
const sub = {boxWidthMetres: 0.4, boxDepthMetres: 0.5};

function wallsOf(id: string, [xMetres, yMetres]: readonly [number, number], size: Partial<typeof sub>) {
	const profile: Profile = {
		...made,
		subs: made.subs!.map(one => ({...one, ...(one.id === id && size)})),
		channels: made.channels.map(one => (one.id === id ? {...one, speaker: size} : one)),
		planned: {places: [{id, xMetres, yMetres, zMetres: 0.3}], withinMetres: 0.08, costDb: 0.1},
	};
	return stakePoints(profile, room).find(point => point.id === id)!.walls;
}

test('a sub of known size is measured at its back to the nearer wall and at its side to the other', () => {
	// Its middle 0.3 m from the screen wall and 1 m from the left one: back half of 0.5 m, side half of 0.4 m before it.
	expect(wallsOf('sub1', [1, 0.3], sub)).toEqual([
		{plane: 'wall:left', metres: 1, touch: {at: 'side', beforeMetres: 0.2}},
		{plane: 'wall:front', metres: 0.3, touch: {at: 'back', beforeMetres: 0.25}},
	]);
	const [side, end] = wallsOf('sub1', [3.7, 4], sub);
	expect(side).toMatchObject({plane: 'wall:right', touch: {at: 'back', beforeMetres: 0.25}});
	expect(end).toMatchObject({plane: 'wall:back', touch: {at: 'side', beforeMetres: 0.2}});
});

test('a speaker in the front has its back to the screen wall, its point on its front', () => {
	const [side, end] = wallsOf('FL', [0.4, 0.6], {boxWidthMetres: 0.3, boxDepthMetres: 0.35});
	expect(side.touch).toEqual({at: 'side', beforeMetres: 0.15});
	expect(end.touch).toEqual({at: 'back', beforeMetres: 0.35});
});

test('without a size, or where the box would stand in the wall, lengths go to the point itself', () => {
	expect(wallsOf('sub1', [1, 0.3], {}).some(({touch}) => touch)).toBe(false);
	expect(wallsOf('sub1', [1, 0.1], sub)[1]).toEqual({plane: 'wall:front', metres: 0.1});
});
