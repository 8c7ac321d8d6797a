import {expect, test} from 'vitest';
import {moved} from '../../../source/study/placement/moves.ts';
import {pairCorrection} from '../../../source/study/placement/pairCorrection.ts';
import {symmetry} from '../../../source/study/placement/symmetry.ts';
import type {Vector} from '../../../source/study/survey/vectors.ts';
import {ear, placedAt, screenAhead} from '../survey/exampleNetwork.ts';

const pairOf = (left: Vector, right: Vector, ids = ['FL', 'FR']) => {
	const {result} = placedAt({sofa: ear, screen: screenAhead, [ids[0]!]: left, [ids[1]!]: right});
	return {result, pair: symmetry(result, 'sofa')[0]!};
};
const repairs = (pair: ReturnType<typeof pairOf>['pair']) =>
	Object.fromEntries(pair.differences.map(({what, repair}) => [what, repair]));

test('symmetry has no pair where one side is missing', () => {
	const {result} = placedAt({sofa: ear, FL: [1, 0.5, 1]});
	expect(symmetry(result, 'sofa')).toEqual([]);
});

test('symmetry needs nothing for a mirrored pair', () => {
	const {pair} = pairOf([1, 0.5, 1], [4, 0.5, 1]);
	expect(new Set(Object.values(repairs(pair)))).toEqual(new Set(['nothing needed']));
});

test('symmetry gives a mere difference of distance to delays and trims', () => {
	// The right one stands on the mirrored line of sight, 30 cm nearer to the ear.
	const toEar = [1.5, -3.3, -0.1] as const;
	const factor = 1 - 0.3 / Math.hypot(...toEar);
	const {pair} = pairOf([1, 0.5, 1], [ear[0] + 1.5 * factor, ear[1] - 3.3 * factor, ear[2] - 0.1 * factor]);
	expect(repairs(pair)).toMatchObject({
		azimuth: 'nothing needed',
		elevation: 'nothing needed',
		distance: 'delays and trims',
		'side wall': 'only moving',
	});
	expect(pair.differences.find(({what}) => what === 'distance')!.difference.value).toBeCloseTo(0.3, 5);
});

test('symmetry leaves overheads of different heights to moving', () => {
	const {pair} = pairOf([1.5, 2.6, 2.2], [3.5, 2.6, 2.55], ['TpFL', 'TpFR']);
	expect(repairs(pair)).toMatchObject({
		elevation: 'only moving',
		height: 'only moving',
		distance: 'delays and trims',
	});
});

test('pairCorrection makes one the mirror image of the other', () => {
	const {result, pair} = pairOf([1, 0.5, 1], [4.2, 0.8, 1.1]);
	const move = pairCorrection(result, pair, 'sofa')!;
	expect(move.moves).toBe('FR');
	expect(move.to.map(value => Number(value.toFixed(4)))).toEqual([4, 0.5, 1]);
	const [after] = symmetry(moved(result, [{id: 'FR', by: move.by}]), 'sofa');
	expect(new Set(Object.values(repairs(after!)))).toEqual(new Set(['nothing needed']));
});

test('pairCorrection moves the left one where the image of the left is outside the room', () => {
	const {profile, result} = placedAt({
		sofa: [3, 3.8, 1.1],
		screen: [3, 0.05, 1.1],
		FL: [0.3, 0.5, 1],
		FR: [4.5, 0.5, 1],
	});
	expect(profile.room.widthMetres).toBe(5);
	const move = pairCorrection(result, symmetry(result, 'sofa')[0]!, 'sofa')!;
	expect(move.moves).toBe('FL');
	expect(move.to[0]).toBeCloseTo(1.5, 4);
});
