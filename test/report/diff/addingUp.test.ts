import fc from 'fast-check';
import {expect, test} from 'vitest';
import {addingUp} from '../../../source/report/diff/addingUp.ts';

test('what rounding leaves goes to the largest amount', () => {
	// 0.24 + 0.24 + 1.02 = 1.5, shown as 0.2, 0.2 and 1.0: the tenth that is missing is the largest one's.
	const shown = addingUp([0.24, 0.24, 1.02], 1.5, 0.1).map(amount => Math.round(amount * 10) / 10);
	expect(shown).toEqual([0.2, 0.2, 1.1]);
	expect(addingUp([], 3, 0.1)).toEqual([]);
});

test('shown amounts always add up to the total as shown', () => {
	const amount = fc.double({min: -50, max: 50, noNaN: true});
	fc.assert(
		fc.property(
			fc.array(amount, {minLength: 1, maxLength: 8}),
			fc.constantFrom(0.1, 0.01, 1, 0.005),
			(amounts, step) => {
				const total = amounts.reduce((sum, one) => sum + one, 0);
				const sum = addingUp(amounts, total, step).reduce((all, one) => all + one, 0);
				expect(sum / step).toBeCloseTo(Math.round(total / step), 6);
			},
		),
	);
});
