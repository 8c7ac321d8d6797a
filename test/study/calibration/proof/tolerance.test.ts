import {expect, test} from 'vitest';
import {criticalValue} from '../../../../source/study/calibration/proof/tolerance.ts';
import reference from '../../../reference/proof/criticalValues.json' with {type: 'json'};

// scipy.stats.norm.isf. The normal tail used here is good to 1.2e-7 of its value; with the slope of the tail at these
// quantiles, d ln Q/dz ≈ −z, that is less than 1e-6 in z.
test.each(reference.rows)('`criticalValue` agrees with scipy for $count readings at $chance', row => {
	expect(Math.abs(criticalValue(row.count, row.chance) - row.criticalValue)).toBeLessThan(1e-6);
});

test('`criticalValue` of one reading at 0.1 % is the 3.29 of data snooping', () => {
	// Baarda's critical value for α = 0.001 is printed as 3.29.
	expect(criticalValue(1, 0.001).toFixed(2)).toBe('3.29');
});
