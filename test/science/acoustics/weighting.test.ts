import {expect, test} from 'vitest';
import {weightingDb} from '../../../source/science/acoustics/weighting.ts';
import {weightingTable} from './weightingTable.ts';

test('weightingDb refuses a frequency that is not positive and finite', () => {
	expect(() => weightingDb('A', 0)).toThrow('frequencyHz must be finite and > 0 Hz, got 0');
	expect(() => weightingDb('C', Number.NaN)).toThrow('got NaN');
	expect(() => weightingDb('Z', Number.POSITIVE_INFINITY)).toThrow('got Infinity');
});

test('the table holds all 34 nominal frequencies from 10 Hz to 20 kHz', () => {
	expect(weightingTable).toHaveLength(34);
});

// The printed goals are rounded to 0.1 dB, so 0.05 dB is the source's own rounding (and a crumb for ties).
test.each(weightingTable)('weightingDb matches IEC 61672-1 Table 3 at %f Hz', (nominalHz, a, c, z) => {
	const exactHz = 1000 * 10 ** (Math.round(10 * Math.log10(nominalHz / 1000)) / 10);
	expect(Math.abs(weightingDb('A', exactHz) - a)).toBeLessThanOrEqual(0.0501);
	expect(Math.abs(weightingDb('C', exactHz) - c)).toBeLessThanOrEqual(0.0501);
	expect(weightingDb('Z', exactHz)).toBe(z);
});
