import {expect, test} from 'vitest';
import {moved} from '../../../source/study/placement/moves.ts';
import {judgePlacement} from '../../../source/study/placement/placement.ts';
import type {Vector} from '../../../source/study/survey/vectors.ts';
import {ear, placedAt, screenAhead} from '../survey/exampleNetwork.ts';

const placement = (left: Vector, right: Vector) => {
	const {profile, result} = placedAt({sofa: ear, screen: screenAhead, FL: left, FR: right});
	return {profile, result, judged: judgePlacement(profile, result)};
};

test('seatCorrection is none where only one front is off, or both in opposite senses', () => {
	expect(placement([0.6, 0.5, 1.1], [4.4, 0.5, 1.1]).judged.seatMove).toBeUndefined();
	expect(placement([1.9, 0.5, 1.1], [4.9, 0.5, 1.1]).judged.seatMove).toBeUndefined();
});

test('seatCorrection moves the seat so that both fronts come right', () => {
	const {profile, result, judged} = placement([1.4, 0.5, 1.1], [3.6, 0.5, 1.1]);
	const move = judged.seatMove!;
	expect(move.moves).toBe('sofa');
	// Half of 2.2 m over tan 30° is 1.905 m from the fronts.
	expect(move.to[1]).toBeCloseTo(0.5 + 1.1 / Math.tan(Math.PI / 6), 4);
	const after = judgePlacement(profile, moved(result, [{id: 'sofa', by: move.by}]));
	for (const id of ['FL', 'FR']) expect(after.judgements.find(one => one.id === id)!.verdict).toBe('nominal');
	expect(judged.remarks.some(({code}) => code === 'seat-instead')).toBe(true);
});
