import {expect, test} from 'vitest';
import {butterworth} from '../../../../source/science/acoustics/filters/butterworth.ts';
import {filterLevelDb} from '../../../../source/science/acoustics/filters/response.ts';

test('butterworth refuses an order or a corner that is out of range and names it', () => {
	expect(() => butterworth('low', 0, 80)).toThrow('order must be a whole number from 1 to 8, got 0');
	expect(() => butterworth('low', 9, 80)).toThrow('got 9');
	expect(() => butterworth('low', 2.5, 80)).toThrow('got 2.5');
	expect(() => butterworth('high', 2, 0)).toThrow('cornerHz must be finite and > 0 Hz, got 0');
	expect(() => butterworth('high', 2, Number.NaN)).toThrow('got NaN');
});

// Definition of the Butterworth response (1930): half power, −3.0103 dB, at the corner for every order.
test.each([1, 2, 3, 4, 5, 6, 7, 8])('butterworth of order %i is 3.0103 dB down at its corner', order => {
	expect(filterLevelDb(butterworth('low', order, 80), 80)).toBeCloseTo(-3.0103, 4);
	expect(filterLevelDb(butterworth('high', order, 80), 80)).toBeCloseTo(-3.0103, 4);
});

// |H|² = 1/(1 + x^2n): the closed form, independent of the poles.
test.each([1, 2, 4, 8])('butterworth of order %i follows its closed form away from the corner', order => {
	for (const x of [0.25, 0.7, 1.5, 4]) {
		const expected = -10 * Math.log10(1 + x ** (2 * order));
		expect(filterLevelDb(butterworth('low', order, 100), 100 * x)).toBeCloseTo(expected, 9);
		expect(filterLevelDb(butterworth('high', order, 100), 100 / x)).toBeCloseTo(expected, 9);
	}
});
