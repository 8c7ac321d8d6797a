import {expect, test} from 'vitest';
import {cascade} from '../../../../source/science/acoustics/filters/analogFilter.ts';
import {butterworth} from '../../../../source/science/acoustics/filters/butterworth.ts';
import {linkwitzRiley} from '../../../../source/science/acoustics/filters/linkwitzRiley.ts';
import {filterLevelDb, filterResponse} from '../../../../source/science/acoustics/filters/response.ts';

test('linkwitzRiley refuses odd orders and names them', () => {
	expect(() => linkwitzRiley('low', 3, 80)).toThrow(
		'order of a Linkwitz-Riley filter must be 2, 4, 6 or 8, got 3',
	);
});

// Linkwitz, JAES 24 (1976) 2–8; values recomputed from the definition, printed to 0.0001 dB.
const printed = [
	[20, -0.0339, -48.1987],
	[40, -0.5266, -24.609],
	[80, -6.0206, -6.0206],
	[90, -8.3055, -4.2133],
	[160, -24.609, -0.5266],
] as const;

test.each(printed)('linkwitzRiley of order 4 at 80 Hz has the known levels at %i Hz', (f, lowDb, highDb) => {
	expect(Math.abs(filterLevelDb(linkwitzRiley('low', 4, 80), f) - lowDb)).toBeLessThan(1e-4);
	expect(Math.abs(filterLevelDb(linkwitzRiley('high', 4, 80), f) - highDb)).toBeLessThan(1e-4);
});

const grid = Float64Array.from({length: 97}, (_, index) => 20 * 2 ** (index / 24));

/** Order 2 and 6 need one side inverted, 4 and 8 none. */
test.each([
	[2, -1],
	[4, 1],
	[6, -1],
	[8, 1],
])('linkwitzRiley low and high of order %i sum to 0 dB at every frequency', (order, sign) => {
	const low = filterResponse(linkwitzRiley('low', order, 80), grid);
	const high = filterResponse(linkwitzRiley('high', order, 80), grid);
	for (const index of grid.keys()) {
		const real = low.real[index]! + sign * high.real[index]!;
		const imaginary = low.imaginary[index]! + sign * high.imaginary[index]!;
		expect(20 * Math.log10(Math.hypot(real, imaginary))).toBeCloseTo(0, 9);
	}
});

test('cascade of two Butterworth filters of order 2 is Linkwitz-Riley of order 4', () => {
	const two = cascade(butterworth('low', 2, 80), butterworth('low', 2, 80));
	expect(filterLevelDb(two, 80)).toBeCloseTo(-6.0206, 4);
});
