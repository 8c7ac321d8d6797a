import {expect, test} from 'vitest';
import {throughFilter} from '../../../../source/science/acoustics/filters/analogFilter.ts';
import {boxFilter} from '../../../../source/science/acoustics/filters/box.ts';
import {butterworth} from '../../../../source/science/acoustics/filters/butterworth.ts';
import {filterResponse} from '../../../../source/science/acoustics/filters/response.ts';
import {
	excursionReliefDb,
	excursionWeights,
} from '../../../../source/study/calibration/crossover/excursion.ts';
import ventedCone from '../../../reference/ventedCone.json' with {type: 'json'};

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

// The circuit itself, solved by numpy: test/reference/ventedCone.py. Its alignment is Butterworth's, whose tuning is the limit
// at −3 dB; doubles on both sides, so that 1e-6 of the largest is rounding.
test('excursionWeights of a vented box are the cone’s movement in its acoustical circuit', () => {
	const weights = excursionWeights({lowLimitHertz: ventedCone.resonanceHz, lowLimitDropDb: 3, box: 'vented'});
	const largest = Math.max(...ventedCone.coneEnergy);
	for (const [index, energy] of ventedCone.coneEnergy.entries()) {
		expect(Math.abs(weights[index]! / weights[0]! - energy) / largest).toBeLessThan(1e-6);
	}
});

test('boxFilter of a vented box is what cone and port radiate together in that circuit', () => {
	const frequenciesHz = Float64Array.from(ventedCone.frequenciesHz);
	const {real, imaginary} = filterResponse(
		boxFilter({lowLimitHertz: ventedCone.resonanceHz, lowLimitDropDb: 3, box: 'vented'}),
		frequenciesHz,
	);
	const energies = frequenciesHz.map((_, index) => real[index]! ** 2 + imaginary[index]! ** 2);
	for (const [index, energy] of ventedCone.heardEnergy.entries())
		expect(Math.abs(energies[index]! / energies.at(-1)! - energy)).toBeLessThan(1e-6);
});
