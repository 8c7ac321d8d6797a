import {expect, test} from 'vitest';
import {crossSectionModes} from '../../../source/science/numeric/crossSectionModes.ts';
import {finished} from '../../../source/science/numeric/finished.ts';

// The orders are chosen for errors below 1e-4 of the largest eigenvalue wanted.
test('a square has the eigenvalues of its closed form', () => {
	const strips = [{from: 0, to: 1, low: 0, topAtFrom: 1, topAtTo: 1}];
	const found = finished(crossSectionModes(strips, 60)).eigenvalues.map(value => value / Math.PI ** 2);
	const closed = [0, 1, 1, 2, 4, 4, 5, 5];
	for (const [n, value] of closed.entries()) expect(found[n]).toBeCloseTo(value, 4);
});

// Closed form: even and odd sums of cos(mπx)·cos(nπy), λ = π²(m² + n²). The eave is a millimetre instead of nothing.
test('a right isosceles triangle has the eigenvalues of its closed form', () => {
	const strips = [{from: 0, to: 1, low: 0, topAtFrom: 0.001, topAtTo: 1}];
	const found = finished(crossSectionModes(strips, 90)).eigenvalues;
	for (const [n, value] of [0, 9.869604, 19.739209, 39.478418, 49.348022, 78.956835].entries())
		expect(Math.abs(found[n]! - value)).toBeLessThan(0.003 * value + 1e-9);
});

// M. Dauge, Benchmark computations for Maxwell equations, L-shaped domain: the Neumann values (from memory; recomputed by
// finite elements). The re-entrant corner slows convergence of the first: 0.3 % there, 0.15 % in frequency, rounding of the source elsewhere.
test('the L of three squares has the published eigenvalues', () => {
	const strips = [
		{from: 0, to: 1, low: 0, topAtFrom: 1, topAtTo: 1},
		{from: 0, to: 1, low: 1, topAtFrom: 2, topAtTo: 2},
		{from: 1, to: 2, low: 0, topAtFrom: 1, topAtTo: 1},
	];
	const found = finished(crossSectionModes(strips, 15)).eigenvalues;
	const published = [1.47562182, 3.53403137, 9.8696044, 9.8696044, 11.3894794];
	for (const [n, value] of published.entries())
		expect(Math.abs(found[n + 1]! / value - 1)).toBeLessThan(n === 0 ? 3e-3 : 2e-4);
});

test('eigenfunctions are scaled to a square integral of one and vanish from outside', () => {
	const strips = [{from: 0, to: 4, low: 0, topAtFrom: 2, topAtTo: 3}];
	const modes = finished(crossSectionModes(strips, 9));
	const sums = new Float64Array(modes.eigenvalues.length);
	const steps = 80;
	for (let i = 0; i < steps; i++) {
		const u = (4 * (i + 0.5)) / steps;
		const top = 2 + u / 4;
		for (let j = 0; j < steps; j++) {
			const values = modes.at(u, (top * (j + 0.5)) / steps)!;
			for (const [n, value] of values.entries()) sums[n]! += (value ** 2 * 4 * top) / steps ** 2;
		}
	}

	// Midpoint sums of 80 by 80 are good to some 1e-3.
	for (const sum of sums) expect(sum).toBeCloseTo(1, 2);
	expect(modes.at(1, 2.4)).toBeUndefined();
	expect(modes.at(-0.1, 1)).toBeUndefined();
});

test('a strip without width is refused', () => {
	expect(() => finished(crossSectionModes([{from: 1, to: 1, low: 0, topAtFrom: 1, topAtTo: 1}], 9))).toThrow(
		'expected a width',
	);
});
