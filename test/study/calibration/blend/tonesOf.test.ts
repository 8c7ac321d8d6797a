import {expect, test} from 'vitest';
import {blendTones, tonesToRead} from '../../../../source/study/calibration/blend/tonesOf.ts';

test('blendTones stand a third of an octave apart about the crossover, in whole hertz', () => {
	expect(blendTones(80)).toEqual([64, 80, 100]);
	expect(blendTones(60)).toEqual([48, 60, 75]);
});

test('tonesToRead keep to a tone close by that readings were begun with', () => {
	expect(tonesToRead(80, [])).toEqual([64, 80, 100]);
	expect(tonesToRead(80, [60, 60, 66])).toEqual([60, 80, 100]);
});

test('tonesToRead prefer the very tone where both were read, and leave far ones alone', () => {
	expect(tonesToRead(80, [60, 60, 64])).toEqual([64, 80, 100]);
	expect(tonesToRead(80, [50, 71])).toEqual([64, 80, 100]);
});
