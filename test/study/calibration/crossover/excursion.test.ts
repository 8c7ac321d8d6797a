import {expect, test} from 'vitest';
import {throughFilter} from '../../../../source/science/acoustics/filters/analogFilter.ts';
import {butterworth} from '../../../../source/science/acoustics/filters/butterworth.ts';
import {
	excursionReliefDb,
	excursionWeights,
} from '../../../../source/study/calibration/crossover/excursion.ts';

test('excursionReliefDb is 0 without a high-pass', () => {
	expect(excursionReliefDb(excursionWeights({lowLimitHertz: 60}), throughFilter)).toBeCloseTo(0, 12);
});

test('excursionReliefDb grows with the crossover for closed and vented boxes', () => {
	for (const box of ['closed', 'vented'] as const) {
		const weights = excursionWeights({lowLimitHertz: 50, box});
		const relief = [40, 60, 80, 120].map(hertz => excursionReliefDb(weights, butterworth('high', 2, hertz)));
		expect(relief).toEqual([...relief].sort((a, b) => a - b));
		expect(relief[0]).toBeGreaterThan(1);
	}
});

// Small (1972): below resonance the cone of a closed box moves by the same amount at every frequency for one drive;
// a factor 1/f² · f²/fc² is flat. Two octaves below, the Butterworth box is within 0.4 % of that.
test('excursionWeights of a closed box are flat well below its resonance', () => {
	const weights = excursionWeights({lowLimitHertz: 160, box: 'closed'});
	expect(Math.abs(weights[6]! / weights[0]! - 1)).toBeLessThan(0.004);
});
