import fc from 'fast-check';
import {describe, expect, test} from 'vitest';
import {jointRounding} from '../../../source/science/numeric/jointRounding.ts';
import {smallestArc} from '../../../source/science/numeric/smallestArc.ts';
import {bestByForce, judge} from './bruteForce.ts';

const seed = 20260418;

describe('edges', () => {
	test('jointRounding of no items is empty and fits', () => {
		expect(jointRounding([])).toEqual({
			stepped: [],
			offset: 0,
			worstPairwiseError: 0,
			fits: true,
			isOptimal: true,
		});
	});

	test('jointRounding of one item takes the nearest point, or the limit', () => {
		expect(jointRounding([{exact: 1.26, step: 0.5}]).stepped).toEqual([1.5]);
		const limited = jointRounding([{exact: 15, step: 0.5, minimum: -12, maximum: 12}]);
		expect(limited).toMatchObject({stepped: [12], offset: -3, worstPairwiseError: 0, fits: true});
	});

	test('jointRounding names the item that has no step', () => {
		expect(() =>
			jointRounding([
				{exact: 1, step: 1},
				{exact: 1, step: 0},
			]),
		).toThrow('items[1].step must be finite and > 0, got 0');
	});

	test('jointRounding names the item that is not a number', () => {
		expect(() => jointRounding([{exact: Number.NaN, step: 1}])).toThrow(
			'items[0].exact must be finite, got NaN',
		);
	});

	test('jointRounding names the item whose limits are crossed', () => {
		expect(() => jointRounding([{exact: 0, step: 1, minimum: 2, maximum: 1}])).toThrow(
			'items[0].minimum must not exceed maximum, got 2 and 1',
		);
	});

	test('jointRounding shows steps without binary crumbs', () => {
		const {stepped} = jointRounding([{exact: 0.3, step: 0.1, minimum: 0, maximum: 1}]);
		expect(stepped).toEqual([0.3]);
	});
});

describe('by hand', () => {
	test('jointRounding uses the common offset: 0.4, 1.4 and 2.6 lose 0.2, not the 0.8 of each on its own', () => {
		// Fractions 0.4, 0.4, 0.6: the largest gap on the circle is 0.8, so 1 − 0.8 = 0.2 is the least.
		// Rounded one by one: 0, 1, 3 with errors −0.4, −0.4, +0.4.
		const rounding = jointRounding([0.4, 1.4, 2.6].map(exact => ({exact, step: 1})));
		expect(rounding.worstPairwiseError).toBeCloseTo(0.2, 9);
		expect(rounding.stepped).toEqual([0, 1, 2]);
		expect(rounding.offset).toBeCloseTo(-0.5, 9);
	});

	test('jointRounding lays the loss on the outlier when the range is too short', () => {
		// Range 0 to 10, spread 15: 15 gets 10 and 0 gets 0, 5 apart. The others stay within one step of 0's error;
		// errors −5, 0, −1, −1, −1 have a mean of −1.6 and squares of 11.56 + 2.56 + 3 · 0.36 = 15.2 about it,
		// errors −5, 0, 0, 0, 0 would have 16 + 4 · 1 = 20.
		const exact = [15, 0, 1, 2, 3];
		const rounding = jointRounding(exact.map(value => ({exact: value, step: 1, minimum: 0, maximum: 10})));
		expect(rounding).toMatchObject({stepped: [10, 0, 0, 1, 2], worstPairwiseError: 5, fits: false});
	});

	test('jointRounding changes least where answers are equally good', () => {
		// 0.5 off in either direction is the same; the control at 1 stays.
		const items = [{exact: 0.5, step: 1, minimum: 0, maximum: 4, current: 1}];
		expect(jointRounding(items).stepped).toEqual([1]);
		expect(jointRounding([{...items[0]!, current: 0}]).stepped).toEqual([0]);
	});
});

const exacts = (count: number) =>
	fc.array(fc.integer({min: -3000, max: 3000}), {minLength: 1, maxLength: count});

describe('laws', () => {
	test('jointRounding reaches the largest-gap optimum for one common step without limits', () => {
		fc.assert(
			fc.property(exacts(64), fc.integer({min: 1, max: 500}), (values, step) => {
				const items = values.map(value => ({exact: value / 100, step: step / 100}));
				const rounding = jointRounding(items);
				const least = smallestArc(
					items.map(({exact}) => exact),
					step / 100,
				);
				expect(rounding.worstPairwiseError).toBeCloseTo(least, 6);
				expect(judge(items, rounding.stepped).worst).toBeCloseTo(least, 6);
			}),
			{seed},
		);
	});

	const limited = fc.record({
		exact: fc.integer({min: -60, max: 60}).map(value => value / 10),
		step: fc.constantFrom(0.3, 0.5, 0.7, 1, 1.1),
		minimum: fc.integer({min: -3, max: 1}),
		points: fc.integer({min: 0, max: 5}),
	});
	const items = fc.array(limited, {minLength: 1, maxLength: 4}).map(list =>
		list.map(({exact, step, minimum, points}) => ({
			exact,
			step,
			minimum,
			maximum: minimum + points * step,
		})),
	);

	test('jointRounding equals brute force for unequal steps and limits', () => {
		fc.assert(
			fc.property(items, list => {
				const rounding = jointRounding(list);
				const found = judge(list, rounding.stepped);
				const best = bestByForce(list);
				expect(rounding.isOptimal).toBe(true);
				expect(found.worst).toBeCloseTo(best.worst, 5);
				if (!rounding.fits) {
					expect(found.together).toBe(best.together);
					expect(found.squares).toBeCloseTo(best.squares, 5);
				}
			}),
			{seed, numRuns: 2000},
		);
	});

	test('jointRounding equals brute force where one step is common and the range too short', () => {
		const short = fc
			.tuple(
				fc.array(fc.integer({min: 0, max: 120}), {minLength: 2, maxLength: 5}),
				fc.integer({min: 1, max: 5}),
			)
			.map(([values, count]) =>
				values.map(value => ({exact: value / 10, step: 1, minimum: 0, maximum: count})),
			);
		fc.assert(
			fc.property(short, list => {
				const rounding = jointRounding(list);
				const found = judge(list, rounding.stepped);
				const best = bestByForce(list);
				expect(found.worst).toBeCloseTo(best.worst, 5);
				if (!rounding.fits)
					expect([found.together, found.squares.toFixed(4)]).toEqual([
						best.together,
						best.squares.toFixed(4),
					]);
			}),
			{seed, numRuns: 1000},
		);
	});

	test('jointRounding stays on the steps and inside the limits', () => {
		fc.assert(
			fc.property(items, list => {
				for (const [index, value] of jointRounding(list).stepped.entries()) {
					const {step, minimum, maximum} = list[index]!;
					const steps = (value - minimum) / step;
					expect(Math.abs(steps - Math.round(steps))).toBeLessThan(1e-6);
					expect(value).toBeGreaterThanOrEqual(minimum - 1e-9);
					expect(value).toBeLessThanOrEqual(maximum + 1e-9);
				}
			}),
			{seed},
		);
	});

	test('jointRounding of wanted points is those points', () => {
		fc.assert(
			fc.property(fc.array(fc.integer({min: -24, max: 24}), {minLength: 1, maxLength: 64}), ks => {
				const list = ks.map(k => ({exact: k / 2, step: 0.5, minimum: -12, maximum: 12}));
				const rounding = jointRounding(list);
				expect(rounding.stepped).toEqual(list.map(({exact}) => (exact === 0 ? 0 : exact)));
				expect(rounding.worstPairwiseError).toBeLessThan(1e-9);
			}),
			{seed},
		);
	});
});

test('jointRounding settles 64 channels of two fine steps over a wide range', () => {
	const list = Array.from({length: 64}, (_, index) => ({
		exact: ((index * 7919) % 1000) / 9.7,
		step: index < 48 ? 0.087 : 0.02,
		minimum: 0,
		maximum: 200,
	}));
	const rounding = jointRounding(list);
	expect(rounding.isOptimal).toBe(true);
	expect(rounding.worstPairwiseError).toBeLessThan(0.087);
});

test('jointRounding answers even for steps far too fine to try them all, and says so', () => {
	const list = [
		{exact: 0.123_456, step: 1e-7, minimum: 0, maximum: 1000},
		{exact: 5.4321, step: 1.3e-7, minimum: 0, maximum: 1000},
		{exact: 7.7777, step: 0.7e-7, minimum: 0, maximum: 1000},
	];
	const rounding = jointRounding(list);
	expect(rounding.worstPairwiseError).toBeLessThan(1.3e-7);
});
