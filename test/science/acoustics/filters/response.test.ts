import {expect, test} from 'vitest';
import {cascade, throughFilter} from '../../../../source/science/acoustics/filters/analogFilter.ts';
import {closedBox} from '../../../../source/science/acoustics/filters/box.ts';
import {filterResponse} from '../../../../source/science/acoustics/filters/response.ts';
import {type FilterShape, shapedFilter} from '../../../../source/science/acoustics/filters/shape.ts';
import reference from '../../../reference/filters.json' with {type: 'json'};
import {groupDelayMs} from './groupDelayOracle.ts';

const grid = Float64Array.from(reference.frequenciesHz);

test('filterResponse of the filter that changes nothing is 1', () => {
	const {real, imaginary} = filterResponse(throughFilter, Float64Array.of(0, 20, 20_000));
	expect([...real]).toEqual([1, 1, 1]);
	expect([...imaginary].map(Math.abs)).toEqual([0, 0, 0]);
});

// scipy.signal.butter(analog=True) and freqs, scipy 1.10.1. scipy multiplies polynomials out, which costs it some
// digits at order 8; 1e-9 of the pass band is far below anything heard and far above that loss.
test.each(reference.filters)(
	'filterResponse equals scipy.signal for $kind $pass-pass of order $order',
	entry => {
		const shape: FilterShape = {kind: entry.kind as FilterShape['kind'], order: entry.order};
		const filter = shapedFilter(entry.pass as 'low' | 'high', shape, reference.cornerHz);
		const {real, imaginary} = filterResponse(filter, grid);
		for (const index of grid.keys()) {
			expect(Math.abs(real[index]! - entry.real[index]!)).toBeLessThan(1e-9);
			expect(Math.abs(imaginary[index]! - entry.imaginary[index]!)).toBeLessThan(1e-9);
		}

		// The reference is a central difference of step 1e-4: its own error is of the order of 1e-8 of the delay.
		const delays = groupDelayMs(filter, grid);
		for (const index of grid.keys())
			expect(Math.abs(delays[index]! - entry.groupDelayMs[index]!)).toBeLessThan(1e-5);
	},
);

test.each(reference.closedBoxes)(
	'filterResponse equals scipy.signal for a closed box of Q $totalQ',
	entry => {
		const {real, imaginary} = filterResponse(closedBox(entry.resonanceHz, entry.totalQ), grid);
		for (const index of grid.keys()) {
			expect(Math.abs(real[index]! - entry.real[index]!)).toBeLessThan(1e-9);
			expect(Math.abs(imaginary[index]! - entry.imaginary[index]!)).toBeLessThan(1e-9);
		}
	},
);

test('cascade multiplies responses', () => {
	const low = shapedFilter('low', {kind: 'butterworth', order: 3}, 120);
	const high = shapedFilter('high', {kind: 'butterworth', order: 2}, 40);
	const a = filterResponse(low, grid);
	const b = filterResponse(high, grid);
	const both = filterResponse(cascade(low, high), grid);
	for (const index of grid.keys()) {
		const real = a.real[index]! * b.real[index]! - a.imaginary[index]! * b.imaginary[index]!;
		expect(both.real[index]).toBeCloseTo(real, 12);
	}
});
