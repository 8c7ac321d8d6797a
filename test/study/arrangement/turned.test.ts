import fc from 'fast-check';
import {expect, test} from 'vitest';
import {type OtherWall, turnedKeepOuts, turnedShape} from '../../../source/study/arrangement/turned.ts';
import {isInside, type RoomShape, volumeOf} from '../../../source/study/room/shape.ts';
import type {Vector} from '../../../source/study/survey/vectors.ts';

const shapes: readonly RoomShape[] = [
	{kind: 'box', widthMetres: 4, lengthMetres: 6, heightMetres: 2.4},
	{
		kind: 'ceiling',
		widthMetres: 4,
		lengthMetres: 6,
		across: 0,
		places: [
			{atMetres: 0, heightMetres: 2.6},
			{atMetres: 1, heightMetres: 2.6},
			{atMetres: 4, heightMetres: 1.4},
		],
	},
	{
		kind: 'ceiling',
		widthMetres: 4,
		lengthMetres: 6,
		across: 1,
		places: [
			{atMetres: 0, heightMetres: 1.4},
			{atMetres: 6, heightMetres: 2.6},
		],
	},
	...(['frontLeft', 'frontRight', 'backLeft', 'backRight'] as const).map(
		(corner): RoomShape => ({
			kind: 'corner',
			widthMetres: 4,
			lengthMetres: 6,
			heightMetres: 2.4,
			missing: {corner, widthMetres: 1.3, lengthMetres: 2.1},
		}),
	),
];

/** The same place, told from the wall that is then the front; facing the left wall the old front is on the right. */
function turnedPoint(
	[x, y, z]: Vector,
	{widthMetres: w, lengthMetres: l}: RoomShape,
	wall: OtherWall,
): Vector {
	if (wall === 'wall:back') return [w - x, l - y, z];
	return wall === 'wall:left' ? [l - y, x, z] : [y, w - x, z];
}

const walls = ['wall:left', 'wall:right', 'wall:back'] as const;

test('a room told from another wall holds the same places and the same air', () => {
	fc.assert(
		fc.property(
			fc.constantFrom(...shapes),
			fc.constantFrom(...walls),
			fc.double({min: 0.01, max: 3.99, noNaN: true}),
			fc.double({min: 0.01, max: 5.99, noNaN: true}),
			fc.double({min: 0, max: 2.8, noNaN: true}),
			(shape, wall, x, y, z) => {
				const turned = turnedShape(shape, wall);
				expect(volumeOf(turned)).toBeCloseTo(volumeOf(shape), 9);
				expect(isInside(turned, turnedPoint([x, y, z], shape, wall))).toBe(isInside(shape, [x, y, z]));
			},
		),
	);
});

test('what stands in the way turns with the room', () => {
	const [box] = shapes;
	const door = {on: 'wall:left', kind: 'door', fromMetres: 1, toMetres: 1.9, swingMetres: 0.9} as const;
	for (const wall of walls) {
		const [taken] = turnedKeepOuts([door], box!, wall);
		const middle = turnedPoint([0.45, 1.45, 0], box!, wall);
		expect((taken!.left + taken!.right) / 2).toBeCloseTo(middle[0], 9);
		expect((taken!.near + taken!.far) / 2).toBeCloseTo(middle[1], 9);
	}
});
