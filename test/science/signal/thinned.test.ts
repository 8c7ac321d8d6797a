import {expect, test} from 'vitest';
import {thinned} from '../../../source/science/signal/thinned.ts';

const rate = 48_000;
const sine = (hertz: number) =>
	Float64Array.from({length: 9600}, (_, index) => Math.sin((2 * Math.PI * hertz * index) / rate));
const rms = (samples: Float64Array) =>
	Math.sqrt(samples.reduce((sum, value) => sum + value * value, 0) / samples.length);

test('thinned leaves one by one as it is, and has as many values as there are steps', () => {
	expect([...thinned(Float64Array.of(1, -2, 3), 1)]).toEqual([1, -2, 3]);
	expect(thinned(new Float64Array(0), 4)).toHaveLength(0);
	expect(thinned(new Float64Array(9), 4)).toHaveLength(3);
});

// A triangle of means over n has the response (sin(πfn/r)/(n·sin(πf/r)))²: 0.997 at 90 Hz, −61 dB where 2910 Hz folds to 90.
test('thinned keeps the bass and keeps out what folds into it', () => {
	expect(rms(thinned(sine(90), 16)) * Math.SQRT2).toBeCloseTo(0.997, 2);
	expect(20 * Math.log10(rms(thinned(sine(2910), 16).subarray(2, -2)) * Math.SQRT2)).toBeLessThan(-58);
});
