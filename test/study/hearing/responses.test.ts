import {expect, test} from 'vitest';
import {synchronisedSweep} from '../../../source/science/signal/sweep.ts';
import type {Impulse} from '../../../source/study/hearing/impulses.ts';
import {
	bandLevelDb,
	impulseSpectrum,
	responseAt,
	responseFrequencies,
} from '../../../source/study/hearing/responses.ts';

const rate = 48_000;
const law = synchronisedSweep(15, 20_000, 2);
const sweep = {channel: 'FL', pass: 'main', law, atSeconds: 0, pauseSeconds: 1.3, levelDbfs: -20} as const;
const zero = 5280;
const window = {beforeMs: 60, afterMs: 950};

function paths(...list: ReadonlyArray<readonly [samples: number, gain: number]>): Impulse {
	const samples = new Float64Array(60_000);
	for (const [delay, gain] of list) samples[zero + delay] = gain;
	return {sweep, rateHz: rate, samples, zero};
}

// Closed form of two paths: 1 + g·e^(−j2πfτ) against the first.
test.each([
	[96, 0.5],
	[331, -0.7],
	[4000, 0.3],
])('two paths %i samples apart are a comb at every frequency that is kept', (late, gain) => {
	const spectrum = impulseSpectrum(paths([480, 1], [480 + late, gain]), 10, window);
	const frequencies = responseFrequencies();
	const {real, imaginary} = responseAt(spectrum, frequencies, 10);
	for (const [index, hertz] of frequencies.entries()) {
		const angle = (-2 * Math.PI * hertz * late) / rate;
		// The cubic between bins of 0.37 Hz; the window is 1 at both paths.
		expect(Math.abs(real[index]! - 1 - gain * Math.cos(angle))).toBeLessThan(2e-3);
		expect(Math.abs(imaginary[index]! - gain * Math.sin(angle))).toBeLessThan(2e-3);
	}
});

test('responseAt refers its phase to the time it is given', () => {
	const spectrum = impulseSpectrum(paths([480, 1]), 10, window);
	const {real, imaginary} = responseAt(spectrum, Float64Array.of(250), 9);
	// 1 ms late is a quarter turn at 250 Hz.
	expect(real[0]).toBeCloseTo(0, 3);
	expect(imaginary[0]).toBeCloseTo(-1, 3);
});

// Mean of |1 + g·e^(−jφ)|² over many turns of φ: 1 + g².
test('bandLevelDb is the sum of the powers where a band holds many teeth of a comb', () => {
	const spectrum = impulseSpectrum(paths([480, 1], [480 + 4000, 0.5]), 10, window);
	expect(bandLevelDb(spectrum, 355, 2818)).toBeCloseTo(10 * Math.log10(1.25), 1);
	expect(bandLevelDb(impulseSpectrum(paths([480, 0.1]), 10, window), 28.2, 112.2)).toBeCloseTo(-20, 6);
});
