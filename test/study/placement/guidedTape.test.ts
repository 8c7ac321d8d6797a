import {expect, test} from 'vitest';
import type {Profile} from '../../../source/profile/types.ts';
import {nextReadings} from '../../../source/study/placement/guidedTape.ts';
import {adjustNetwork} from '../../../source/study/survey/adjust.ts';
import {distance} from '../../../source/study/survey/vectors.ts';
import {bareProfile, type Ends, inventedPlaces, withReadings} from '../survey/room.ts';

const room = {ceiling: {kind: 'flat' as const, heightMetres: 2.45}};
const bare = bareProfile(inventedPlaces, room);
const next = (profile: Profile, count: number) => nextReadings(profile, count, adjustNetwork(profile));

/** The round as it is guided, without errors of the tape. */
const round = (() => {
	let profile = bare;
	const steps: Array<{ends: Ends; station: string; why: string; profile: Profile}> = [];
	for (let count = 0; count < 90; count++) {
		const [one] = next(profile, 1);
		if (!one) break;
		profile = withReadings(profile, [[one.from, one.to]]);
		steps.push({ends: [one.from, one.to], station: one.station, why: one.why, profile});
	}

	return steps;
})();
const pairs = round.map(({ends}) => ends);
const whole = round.at(-1)!.profile;

test('a guided round begins with the room and the seat and keeps every station in one piece', () => {
	const stations = round.filter(({why}) => why !== 'room').map(({station}) => station);
	const changes = stations.filter((station, index) => station !== stations[index - 1]);
	expect(changes).toEqual([...new Set(stations)]);
	expect(changes[0]).toBe('sofa');
	expect(round.findIndex(({why}) => why !== 'room')).toBe(2);
});

test('a guided round finishes each thing with its control before the next is begun', () => {
	const lastOf = new Map(round.map(({station}, index) => [station, index]));
	for (const {id} of adjustNetwork(whole).points) {
		const point = adjustNetwork(round[lastOf.get(id)!]!.profile).points.find(one => one.id === id)!;
		expect(point, id).toMatchObject({status: 'determined', isChecked: true});
	}
});

test('a thing whose control is still missing is determined at most, never checked', () => {
	for (const {profile, station} of round) {
		const open = next(profile, 1)[0];
		if (open?.station !== station || open.why === 'room') continue;
		const point = adjustNetwork(profile).points.find(({id}) => id === station);
		expect(point?.isChecked ?? false).toBe(false);
	}
});

test('a guided round reads heights from the floor and from the ceiling where the seat’s distance does not check them', () => {
	for (const id of Object.keys(inventedPlaces).filter(one => !one.startsWith('Tp'))) {
		const ends = pairs.filter(([from]) => from === id).map(([, to]) => to);
		expect(ends, id).toEqual(expect.arrayContaining(['floor', 'ceiling']));
	}
});

test('a guided round leaves out what the profile states exactly', () => {
	const exact = bareProfile(inventedPlaces, {...room, widthMetres: 4.2, lengthMetres: 5.6});
	expect(next(exact, 3).some(({why}) => why === 'room')).toBe(false);
	expect(next(bareProfile(), 3).map(({to}) => to)).toEqual(['wall:right', 'wall:back', 'ceiling']);
});

test('the guided round of a 5.1.2 room is short, places everything, and hides no foot', () => {
	// Ten things of three coordinates and two room dimensions are 32 unknowns; two controls a thing make 52.
	expect(pairs.length).toBeLessThanOrEqual(60);
	for (const seed of [1, 2, 3]) {
		const result = adjustNetwork(withReadings(bare, pairs, {seed}));
		for (const {id, at, worstSigmaMetres, isChecked} of result.points) {
			expect(worstSigmaMetres).toBeLessThan(0.015);
			expect(isChecked).toBe(true);
			// Four standard deviations: one in sixteen thousand readings lies beyond.
			expect(distance(at, inventedPlaces[id]!)).toBeLessThan(4 * Math.sqrt(3) * worstSigmaMetres);
		}
	}
});

test('nextReadings is empty when nothing is left to learn', () => {
	expect(next(withReadings(bare, pairs, {seed: 1}), 5)).toEqual([]);
});

test('nextReadings asks for several as it would ask for one after the other', () => {
	const asked = next(bare, 12);
	expect(asked.map(({from, to}) => [from, to])).toEqual(pairs.slice(0, 12));
});

test('nextReadings asks for what fixes the one thing that is open', () => {
	const without = pairs.filter(
		([from, to]) => !(from === 'FR' && ['floor', 'wall:right', 'wall:front'].includes(to)),
	);
	const asked = next(withReadings(bare, without, {seed: 2}), 3);
	expect(asked.length).toBeGreaterThan(0);
	for (const {from, to} of asked) {
		expect(from).toBe('FR');
		expect(['floor', 'wall:right', 'wall:front']).toContain(to);
	}
});
