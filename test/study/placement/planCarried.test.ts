import {expect, test} from 'vitest';
import {planCarried} from '../../../source/study/placement/againstPlan.ts';
import {adjustNetwork} from '../../../source/study/survey/adjust.ts';
import {den} from '../../ui/rooms.ts';

const places = [
	{id: 'seat1', xMetres: 2, yMetres: 3.9, zMetres: 1.1},
	{id: 'sub1', xMetres: 3.5, yMetres: 0.3, zMetres: 0.22},
];
const profile = den({
	room: {name: 'Den', widthMetres: 4, lengthMetres: 6, ceiling: {kind: 'flat', heightMetres: 2.4}},
	planned: {places, withinMetres: 0.08, costDb: 0.1},
	tape: [
		{from: 'seat1', to: 'wall:left', metres: 2.03},
		{from: 'seat1', to: 'wall:back', metres: 2.05},
		{from: 'seat1', to: 'floor', metres: 1.1},
	],
});

test('of a chosen plan, what the tape tells stands against it and the rest is open', () => {
	const carried = planCarried(profile, adjustNetwork(profile))!;
	expect(carried.standing.map(({id, isGoodEnough}) => [id, isGoodEnough])).toEqual([['seat1', true]]);
	expect(carried.open).toEqual([{id: 'sub1', at: [3.5, 0.3, 0.22]}]);
});

test('places that a plan began with are no plan', () => {
	expect(planCarried({...profile, planned: {places}}, adjustNetwork(profile))).toBeUndefined();
});
