import {expect, test} from 'vitest';
import {nextReadings, plannedReadings} from '../../../source/study/placement/guidedTape.ts';
import {adjustNetwork} from '../../../source/study/survey/adjust.ts';
import {distance} from '../../../source/study/survey/vectors.ts';
import {bareProfile, type Ends, inventedPlaces, withReadings} from '../survey/room.ts';

const room = {ceiling: {kind: 'flat' as const, heightMetres: 2.45}};
const bare = bareProfile(inventedPlaces, room);
const planned = plannedReadings(bare);
const pairs = planned.map(({from, to}): Ends => [from, to]);

test('plannedReadings keeps every station in one piece, so that nobody walks twice', () => {
	const stations = planned.map(({station}) => station);
	const changes = stations.filter((station, index) => station !== stations[index - 1]);
	expect(changes).toEqual([...new Set(stations)]);
});

test('plannedReadings leaves out what the profile states exactly', () => {
	const exact = plannedReadings(bareProfile(inventedPlaces, {...room, widthMetres: 4.2, lengthMetres: 5.6}));
	expect(exact.some(({why}) => why === 'room')).toBe(false);
	expect(plannedReadings(bareProfile()).some(({to}) => to === 'ceiling')).toBe(true);
});

test('the planned round of a 5.1.2 room is short, places everything to a centimetre, and controls every speaker', () => {
	// Ten things of three coordinates and two room dimensions are 32 unknowns.
	expect(planned.length).toBeLessThanOrEqual(44);
	for (const seed of [1, 2, 3]) {
		const result = adjustNetwork(withReadings(bare, pairs, {seed}));
		for (const {id, at, worstSigmaMetres, kind} of result.points) {
			expect(worstSigmaMetres).toBeLessThan(0.01);
			// Four standard deviations: one in sixteen thousand readings lies beyond.
			expect(distance(at, inventedPlaces[id]!)).toBeLessThan(4 * 3 * worstSigmaMetres);
			if (kind === 'seat' || kind === 'sub') continue;
			const own = result.readings.filter(
				({from, to}) => (from === id || to === id) && (from === 'sofa' || to === 'sofa'),
			);
			expect(
				own.every(({detectableMetres}) => detectableMetres !== undefined && detectableMetres < 0.3),
			).toBe(true);
		}
	}
});

test('nextReadings is empty when nothing is left to learn', () => {
	expect(nextReadings(withReadings(bare, pairs, {seed: 1}), 5)).toEqual([]);
});

test('nextReadings asks for what fixes the one thing that is open', () => {
	const without = pairs.filter(
		([from, to]) => !(from === 'FR' && ['floor', 'wall:right', 'wall:front'].includes(to)),
	);
	const next = nextReadings(withReadings(bare, without, {seed: 2}), 3);
	expect(next.map(({from}) => from)).toEqual(['FR', 'FR', 'FR']);
	expect(new Set(next.slice(0, 2).map(({to}) => to)).size).toBe(2);
});

test('nextReadings taken one after the other determine everything', () => {
	let profile = bare;
	for (let round = 0; round < planned.length; round++) {
		const [next] = nextReadings(profile, 1);
		if (!next) break;
		profile = withReadings(profile, [[next.from, next.to]], {seed: round + 1});
		if (adjustNetwork(profile).undetermined.length === 0) break;
	}

	expect(adjustNetwork(profile).undetermined).toEqual([]);
	expect(profile.tape!.length).toBeLessThanOrEqual(36);
});
