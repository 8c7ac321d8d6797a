import fc from 'fast-check';
import {expect, test} from 'vitest';
import {layoutOf} from '../../../source/profile/layouts.ts';
import {sightlines} from '../../../source/study/placement/angles.ts';
import {type Correction, corrections} from '../../../source/study/placement/corrections.ts';
import {judgeLayout} from '../../../source/study/placement/judge.ts';
import {moved} from '../../../source/study/placement/moves.ts';
import {wayOf, waysBySpeaker} from '../../../source/study/placement/way.ts';
import {outsideBy} from '../../../source/study/survey/roomSize.ts';
import type {Vector} from '../../../source/study/survey/vectors.ts';
import {ear, placedAt, screenAhead, towards} from '../survey/exampleNetwork.ts';

function corrected(id: string, at: Vector, changes = {}) {
	const {profile, result} = placedAt(
		{sofa: ear, screen: screenAhead, FC: towards(0, 0, 3), FL: towards(30, 0, 3), [id]: at},
		changes,
	);
	const layout = layoutOf(profile.channels.map(channel => channel.id));
	const verdicts = (network: typeof result) =>
		judgeLayout(layout, sightlines(network, 'sofa'), () => true).find(one => one.id === id)!;
	return {profile, result, verdicts, ways: corrections(result, verdicts(result), 'sofa', profile.screen)};
}

test('corrections are none for a channel in its range, or one that is fixed', () => {
	expect(corrected('LS', towards(110, 0, 2)).ways).toEqual([]);
	expect(
		corrected('LS', towards(80, 0, 2), {channels: [{id: 'LS', fixed: true}, {id: 'FL'}, {id: 'FC'}]}).ways,
	).toEqual([]);
});

test('corrections put the smallest move first, and it is the perpendicular to the limit', () => {
	const {ways} = corrected('LS', towards(90, 0, 2));
	// From 90° to 100.5° (half a degree inside): the shortest way is 2·sin 10.5° = 0.364 m.
	expect(ways[0]!.sizeMetres).toBeCloseTo(2 * Math.sin((10.5 * Math.PI) / 180), 3);
	expect(ways.map(({sizeMetres}) => sizeMetres)).toEqual(
		ways.map(({sizeMetres}) => sizeMetres).sort((a, b) => a - b),
	);
});

test('corrections end in the range and in the room, wherever the speaker stood', () => {
	fc.assert(
		fc.property(
			fc.double({min: 40, max: 175, noNaN: true}),
			fc.double({min: 1.2, max: 2.3, noNaN: true}),
			(azimuth, metres) => {
				const {ways, result, verdicts} = corrected('LS', towards(azimuth, 0, metres));
				for (const way of ways) {
					const after = moved(result, [{id: 'LS', by: way.by}]);
					expect(verdicts(after).azimuth!.excessDegrees).toBe(0);
					expect(outsideBy(result.room, way.to)).toBe(0);
				}
			},
		),
		{seed: 4, numRuns: 30},
	);
});

test('corrections slide overheads along the ceiling', () => {
	const {ways, result, verdicts} = corrected('TpFL', [1.9, 2.6, 2.55]);
	expect(ways).toHaveLength(1);
	expect(ways[0]!.to[2]).toBeCloseTo(2.55, 9);
	expect(verdicts(moved(result, [{id: 'TpFL', by: ways[0]!.by}])).verdict).not.toBe('outside');
});

test('corrections put no speaker before the picture', () => {
	const {ways} = corrected('FC', [2.5, 0.3, 0.4], {screen: {widthMetres: 2.4, heightMetres: 1.35}});
	for (const {to} of ways) expect(Math.abs(to[2] - 1.1)).toBeGreaterThan(0.67);
});

test('wayOf tells a correction in tape terms: from the nearer wall, and from the seat', () => {
	const {result} = corrected('FL', [1.2, 0.6, 1.1]);
	const correction: Correction = {
		id: 'FL',
		moves: 'FL',
		by: [-0.11, 0.004, 0],
		sizeMetres: 0.11,
		to: [1.09, 0.6, 1.1],
		toSeatMetres: 3.5,
		repairs: ['azimuth'],
	};
	const way = wayOf(result, correction, 'sofa');
	// Four millimetres along the room are less than a tape can be held to.
	expect(way).toEqual({
		moves: 'FL',
		steps: [{axis: 'across', metres: -0.11}],
		places: [{from: 'wall:left', metres: 1.09}],
		from: 'sofa',
		metres: 3.5,
	});
	expect(wayOf(result, {...correction, moves: 'sofa'}, 'sofa').from).toBe('FL');
	const far = wayOf(result, {...correction, to: [3.9, 0.6, 1.1]}, 'sofa').places;
	expect(far).toEqual([{from: 'wall:right', metres: expect.closeTo(result.room.widthMetres! - 3.9, 9)}]);
});

test('waysBySpeaker puts the smallest move first', () => {
	const {result, ways} = corrected('FL', [1.2, 0.6, 1.1]);
	const other: Correction = {...ways[0]!, id: 'FC', moves: 'FC', sizeMetres: 0.001};
	const told = waysBySpeaker(result, [...ways, other], 'sofa');
	expect(told.map(([first]) => first!.moves)).toEqual(['FC', 'FL']);
	expect(told.flat()).toHaveLength(ways.length + 1);
});
