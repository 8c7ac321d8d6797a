import {expect, test} from 'vitest';
import {lfeLowPass} from '../../../../source/study/calibration/crossover/lfe.ts';

test('lfeLowPass has no answer without choices', () => {
	expect(lfeLowPass([])).toBeUndefined();
});

// ITU-R BS.775-3, Annex 7 (known as a quotation): LFE content lies at 20–120 Hz.
test.each([
	[[150, 120, 80], 120],
	[[200, 160], 160],
	[[100, 80], 100],
])('lfeLowPass of %j is %i Hz', (choices, expected) => {
	expect(lfeLowPass(choices)).toBe(expected);
});
