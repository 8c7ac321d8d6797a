import {expect, test} from 'vitest';
import {linkwitzRiley} from '../../../../source/science/acoustics/filters/linkwitzRiley.ts';
import {filterResponse} from '../../../../source/science/acoustics/filters/response.ts';
import {alignmentLoss, bestAlignment} from '../../../../source/study/calibration/blend/optimum.ts';

const pairOfOrder = (order: number) => ({
	crossoverHertz: 80,
	still: (grid: Float64Array) => filterResponse(linkwitzRiley('high', order, 80), grid),
	moved: (grid: Float64Array) => filterResponse(linkwitzRiley('low', order, 80), grid),
});

// Linkwitz (1976): both sides of a fourth-order pair are in phase at every frequency; of a second-order pair in opposition.
test('alignmentLoss of a Linkwitz-Riley pair is nothing in time, for order 2 with the polarity turned', () => {
	expect(alignmentLoss(pairOfOrder(4))(0, false)).toBeCloseTo(0, 9);
	expect(alignmentLoss(pairOfOrder(2))(0, true)).toBeCloseTo(0, 9);
	expect(alignmentLoss(pairOfOrder(4))(6.25, false)).toBeGreaterThan(3);
});

test.each([-7.3, 0, 4.9])('bestAlignment undoes an arrival of %f ms', arrivalMs => {
	const loss = alignmentLoss(pairOfOrder(4));
	const best = bestAlignment((added, flip) => loss(arrivalMs + added, flip), 80, -arrivalMs);
	expect(best.addedMs).toBeCloseTo(-arrivalMs, 2);
	expect(best.flip).toBe(false);
	expect(best.lossDb).toBeLessThan(0.001);
});

test('bestAlignment turns the polarity where delay alone cannot do as well', () => {
	const loss = alignmentLoss(pairOfOrder(4));
	const best = bestAlignment((added, flip) => loss(2 + added, !flip), 80, -2);
	expect(best.flip).toBe(true);
	expect(best.addedMs).toBeCloseTo(-2, 2);
});
