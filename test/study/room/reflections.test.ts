import fc from 'fast-check';
import {expect, test} from 'vitest';
import {boundaryDips, firstReflections} from '../../../source/study/room/reflections.ts';
import {isInside, type RoomShape, volumeOf} from '../../../source/study/room/shape.ts';
import {surfacesOf} from '../../../source/study/room/surfaces.ts';
import {distance, type Vector} from '../../../source/study/survey/vectors.ts';

const box: RoomShape = {kind: 'box', widthMetres: 80, lengthMetres: 120, heightMetres: 100};

// Allen and Berkley's example room, in sample periods: source (30, 100, 40), receiver (50, 10, 60). First arrivals as
// recomputed outside this project: direct 94.3398; once reflected 113.5782, 122.0656, 136.0147 and 136.0147.
test('a box has the first arrivals of the image method', () => {
	const found = firstReflections(box, [30, 100, 40], [50, 10, 60], 1);
	const ways = found.map(({detourMetres}) => detourMetres + 94.3398).sort((a, b) => a - b);
	// Of the six walls; the list above holds the product of two walls too, which is of second order.
	expect(found.length).toBe(6);
	expect(ways[0]).toBeCloseTo(113.5782, 3);
	expect(ways.some(way => Math.abs(way - 122.0656) < 1e-3)).toBe(true);
	expect(ways.filter(way => Math.abs(way - 136.0147) < 1e-3).length).toBe(2);
});

// c = 343 m/s, speaker 0.75 m before the wall behind it, seat far away on its axis: 114.333 Hz (quarter wave, closed form).
test('the wall behind a speaker opposes it at a quarter wave', () => {
	const room: RoomShape = {kind: 'box', widthMetres: 400, lengthMetres: 900, heightMetres: 300};
	const found = firstReflections(room, [200, 0.75, 150], [200, 800, 150], 343);
	const front = found.find(({plane}) => plane === 'wall:front')!;
	expect(front.dipHertz).toBeCloseTo(114.333, 1);
	const dips = boundaryDips([front], 40, 200, -10);
	expect(Math.abs(dips[0]!.frequencyHertz / 114.333 - 1)).toBeLessThan(0.02);
	expect(dips[0]!.plane).toBe('wall:front');
});

const gable: RoomShape = {
	kind: 'ceiling',
	widthMetres: 4.6,
	lengthMetres: 5.4,
	across: 0,
	places: [
		{atMetres: 0, heightMetres: 1.4},
		{atMetres: 2.3, heightMetres: 3.1},
		{atMetres: 4.6, heightMetres: 1.4},
	],
};
const corner: RoomShape = {
	kind: 'corner',
	widthMetres: 5,
	lengthMetres: 6,
	heightMetres: 2.5,
	missing: {corner: 'backRight', widthMetres: 2, lengthMetres: 2.5},
};
const pointIn = (shape: RoomShape) =>
	fc
		.tuple(
			fc.double({min: 0.2, max: 4.3, noNaN: true}),
			fc.double({min: 0.2, max: 5.2, noNaN: true}),
			fc.double({min: 0.1, max: 1.3, noNaN: true}),
		)
		.filter(point => isInside(shape, point));

test.each([
	['gabled', gable],
	['with a corner missing', corner],
] as const)('every reflection in a room %s is the shortest way by its surface', (_, shape) => {
	fc.assert(
		fc.property(pointIn(shape), pointIn(shape), (source, receiver) => {
			fc.pre(distance(source, receiver) > 0.3);
			const surfaces = surfacesOf(shape);
			for (const {plane, piece, at, detourMetres} of firstReflections(shape, source, receiver, 343)) {
				const {corners, normal} = surfaces.find(one => one.plane === plane && one.piece === piece)!;
				const off = at.reduce((sum, value, axis) => sum + (value - corners[0]![axis]!) * normal[axis]!, 0);
				expect(Math.abs(off)).toBeLessThan(1e-9);
				const way = (by: Vector) => distance(source, by) + distance(by, receiver);
				expect(way(at)).toBeCloseTo(distance(source, receiver) + detourMetres, 9);
				// Fermat: a nearby point of the same plane makes the way longer.
				const along: Vector = Math.abs(normal[1]) < 0.9 ? [0, 0.01, 0] : [0.01, 0, 0];
				expect(way([at[0] + along[0], at[1] + along[1], at[2]])).toBeGreaterThan(way(at) - 1e-12);
			}
		}),
		{seed: 3},
	);
});

test('a seat behind a missing corner hears no reflection through it', () => {
	// The right wall's mirror point of these two lies where the corner is missing.
	const found = firstReflections(corner, [2.5, 3, 1], [2.5, 5.8, 1], 343);
	expect(found.map(({plane}) => plane)).not.toContain('wall:right');
	expect(found.map(({plane}) => plane)).toContain('wall:inner-x');
});

test.each([
	['box', {kind: 'box', widthMetres: 4, lengthMetres: 5, heightMetres: 2.5} as RoomShape],
	['gabled', gable],
	['corner', corner],
])('the surfaces of a room close: %s', (_, shape) => {
	// Divergence theorem: the volume is a third of the sum of point · outward normal · area.
	const sum = surfacesOf(shape).reduce((total, {corners, normal, squareMetres}) => {
		const off = corners[0]!.reduce((all, value, axis) => all - value * normal[axis]!, 0);
		return total + (off * squareMetres) / 3;
	}, 0);
	expect(sum).toBeCloseTo(volumeOf(shape), 9);
});
