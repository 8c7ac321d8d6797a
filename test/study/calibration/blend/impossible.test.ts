import {expect, test} from 'vitest';
import {
	impossibleRemark,
	isPhaseSeen,
	judgeCosine,
} from '../../../../source/study/calibration/blend/impossible.ts';
import type {BlendTone} from '../../../../source/study/calibration/blend/tones.ts';

const tone = (decibels: number, stillDb = 75, movedDb = 75): BlendTone => ({
	hertz: 80,
	stillDb,
	movedDb,
	stillSigmaDb: 0.5,
	movedSigmaDb: 0.5,
	knownPhase: 0,
	both: [{decibels, sigmaDb: 0.5, delayMs: 0, inverted: false, stillOffsetDb: 0, movedOffsetDb: 0, index: 4}],
});
const verdict = (of: BlendTone) => judgeCosine(of, of.both[0]!).verdict;

// Two equal levels make at most 6.02 dB more. With 0.5 dB on each reading, 1 dB beyond is noise and 4 dB is not.
test('judgeCosine calls a level too loud only beyond what noise explains', () => {
	expect(verdict(tone(81))).toBe('fine');
	expect(verdict(tone(82))).toBe('fine');
	expect(verdict(tone(85))).toBe('too loud');
});

// 70 and 80 dB make at least 20·lg(10^(80/20) − 10^(70/20)) = 76.7 dB.
test('judgeCosine calls a level too quiet only beyond what noise explains', () => {
	expect(verdict(tone(76.5, 70, 80))).toBe('fine');
	expect(verdict(tone(70, 70, 80))).toBe('too quiet');
});

test('judgeCosine never calls equal levels too quiet, for they can cancel', () => {
	expect(verdict(tone(20))).toBe('fine');
});

test('isPhaseSeen ends where the levels are 15 dB apart', () => {
	expect(isPhaseSeen(tone(80, 60, 75))).toBe(true);
	expect(isPhaseSeen(tone(80, 59.9, 75))).toBe(false);
});

test('impossibleRemark names the tone, the reading, the limit and the causes', () => {
	const of = tone(85);
	const {text, code} = impossibleRemark(of, judgeCosine(of, of.both[0]!), 'FC|sub1');
	expect(code).toBe('levels-too-loud');
	expect(text).toMatch(/80 Hz, meter reading 5: both together can make at most 81\.0 dB/);
	expect(text).toMatch(/another sound/);
	expect(text).toMatch(/wrong plug/);
});
