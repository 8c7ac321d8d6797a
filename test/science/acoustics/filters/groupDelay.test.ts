import {expect, test} from 'vitest';
import {cascade, throughFilter} from '../../../../source/science/acoustics/filters/analogFilter.ts';
import {butterworth} from '../../../../source/science/acoustics/filters/butterworth.ts';
import {groupDelayMs} from './groupDelayOracle.ts';

test('groupDelayMs of the filter that changes nothing is 0', () => {
	expect([...groupDelayMs(throughFilter, Float64Array.of(20, 80))]).toEqual([0, 0]);
});

// The sum of a fourth-order Linkwitz-Riley pair is a second-order all-pass of Q 0.7071; its group delay is
// (2√2/ω0)(1 + x²)/(1 + x⁴), which is twice that of the second-order Butterworth low-pass with the same poles.
// Values recomputed from that closed form for 80 Hz, printed to 0.00001 ms.
test.each([
	[20, 5.9554],
	[40, 6.61997],
	[60, 6.6789],
	[80, 5.62698],
	[120, 3.01652],
	[320, 0.37221],
])('groupDelayMs gives the known delay of a Linkwitz-Riley sum at %i Hz', (f, expectedMs) => {
	const poles = butterworth('low', 2, 80);
	const [actual] = groupDelayMs(cascade(poles, poles), Float64Array.of(f));
	expect(Math.abs(actual! - expectedMs)).toBeLessThan(6e-5);
});
