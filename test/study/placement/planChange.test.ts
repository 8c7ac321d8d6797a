import {describe, expect, test} from 'vitest';
import {planChange} from '../../../source/study/placement/planChange.ts';
import {adjustNetwork} from '../../../source/study/survey/adjust.ts';
import type {Vector} from '../../../source/study/survey/vectors.ts';
import {ear, placedAt, screenAhead} from '../survey/exampleNetwork.ts';
import {bareProfile} from '../survey/room.ts';

const places: Record<string, Vector> = {
	sofa: ear,
	screen: screenAhead,
	FL: [1, 0.5, 1],
	FR: [4, 0.5, 1],
	sub1: [0.4, 0.4, 0.25],
};
const networkOf = (changes: Record<string, Vector> = {}) => placedAt({...places, ...changes}).result;

test('planChange has nothing to compare where nothing is measured', () => {
	const empty = adjustNetwork(bareProfile());
	expect(planChange(empty, empty)).toMatchObject({moved: [], stayed: [], onlyOlder: [], onlyNewer: []});
});

test('planChange of a plan with itself moves nothing', () => {
	const change = planChange(networkOf(), networkOf());
	expect(change.moved).toEqual([]);
	expect(change.stayed).toHaveLength(5);
	expect(change.turn).toBeUndefined();
});

test('planChange finds what moved and how far, the farthest first', () => {
	// Put 0.30 m to the right and 0.40 m back: 0.50 m by the 3-4-5 triangle.
	const change = planChange(networkOf(), networkOf({FL: [1.3, 0.9, 1], sofa: [2.5, 3.6, 1.1]}));
	expect(change.moved.map(({id}) => id)).toEqual(['FL', 'sofa']);
	expect(change.moved[0]!.metres).toBeCloseTo(0.5, 3);
	expect(change.moved[0]!.by[0]).toBeCloseTo(0.3, 3);
	expect(change.moved[0]!.by[1]).toBeCloseTo(0.4, 3);
	expect(change.moved[0]!.by[2]).toBe(0);
	expect(change.stayed).toEqual(['Screen', 'Front right', 'Sub 1']);
});

test('planChange takes a change within the tape’s uncertainty for none', () => {
	expect(planChange(networkOf(), networkOf({FL: [1.004, 0.5, 1]})).moved).toEqual([]);
});

test('planChange names what only one plan has, and follows a thing to its new id', () => {
	const {sub1, FR: _, ...rest} = places;
	const newer = placedAt({...rest, sub9: sub1!}).result;
	expect(planChange(networkOf(), newer)).toMatchObject({
		onlyOlder: ['Front right', 'Sub 1'],
		onlyNewer: ['Sub 9'],
	});
	const matches = [{older: 'sub1', newer: 'sub9'}];
	expect(planChange(networkOf(), newer, {matches, sameRoom: true})).toMatchObject({
		onlyOlder: ['Front right'],
		onlyNewer: [],
		moved: [],
	});
});

describe('without known walls', () => {
	const untied = adjustNetwork({...bareProfile(places), tape: [{from: 'FL', to: 'sofa', metres: 3.6}]});

	test('planChange compares no places and tells what holds them', () => {
		const change = planChange(untied, networkOf({FL: [1.5, 0.5, 1]}));
		expect(change.moved).toEqual([]);
		expect(change.stayed).toEqual([]);
		expect(change.conventions.older.length).toBeGreaterThan(0);
		expect(change.conventions.newer).toEqual([]);
	});
});

test('planChange calls another room never a turned one', () => {
	const older = networkOf();
	const newer = {...networkOf(), room: {widthMetres: 6, lengthMetres: 5}};
	expect(planChange(older, newer, {matches: [], sameRoom: true}).turn?.turn).toBe('quarter');
	expect(planChange(older, newer, {matches: [], sameRoom: false}).turn).toBeUndefined();
});
