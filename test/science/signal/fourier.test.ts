import {expect, test} from 'vitest';
import {forwardReal, inverseReal} from '../../../source/science/signal/fourier.ts';

test('forwardReal refuses a length that is no power of two', () => {
	expect(() => forwardReal(new Float64Array(12))).toThrow('power of two');
});

// Definition of the discrete Fourier transform, summed term by term. Lengths that take every order of steps: of eight, four and two.
test.each([4, 8, 16, 32, 64, 128, 256, 512, 1024, 2048])(
	'forwardReal equals the sum of the definition for %i samples',
	length => {
		const samples = Float64Array.from({length}, (_, n) => Math.sin(n * 1.3) + 0.2 * Math.cos(n * n));
		const spectrum = forwardReal(samples);
		expect(spectrum.length).toBe(length + 2);
		for (let k = 0; k <= length / 2; k += 1) {
			let [real, imaginary] = [0, 0];
			for (const [n, value] of samples.entries()) {
				const turn = (2 * Math.PI * ((k * n) % length)) / length;
				real += value * Math.cos(turn);
				imaginary -= value * Math.sin(turn);
			}

			expect(spectrum[2 * k]).toBeCloseTo(real, 10);
			expect(spectrum[2 * k + 1]).toBeCloseTo(imaginary, 10);
		}
	},
);

test.each([4, 8, 64, 4096])('inverseReal undoes forwardReal for %i samples', length => {
	const samples = Float64Array.from({length}, (_, n) => Math.cos(n * n * 0.37) - 0.1);
	const back = inverseReal(forwardReal(samples));
	expect(back.length).toBe(length);
	for (const [index, value] of samples.entries()) expect(back[index]).toBeCloseTo(value, 12);
});
