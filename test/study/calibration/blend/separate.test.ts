import {expect, test} from 'vitest';
import {bothLevelDb} from '../../../../source/study/calibration/blend/cosine.ts';
import {fitBlend} from '../../../../source/study/calibration/blend/fit.ts';
import {separatingReading} from '../../../../source/study/calibration/blend/separate.ts';
import type {BlendTone} from '../../../../source/study/calibration/blend/tones.ts';

/** Tones read without noise at the delays given, for an arrival of 2 ms. */
const read = (delaysMs: readonly number[], sigmaDb = 0.3): BlendTone[] =>
	[64, 80, 100].map(hertz => ({
		hertz,
		stillDb: 75,
		movedDb: 74,
		stillSigmaDb: sigmaDb,
		movedSigmaDb: sigmaDb,
		knownPhase: 0,
		both: delaysMs.map((delayMs, index) => ({
			decibels: bothLevelDb(75, 74, Math.cos((2 * Math.PI * hertz * (2 + delayMs)) / 1000)),
			sigmaDb,
			delayMs,
			inverted: false,
			stillOffsetDb: 0,
			movedOffsetDb: 0,
			index,
		})),
	}));

test('separatingReading is undefined for a single answer', () => {
	const tones = read([0, 3]);
	expect(separatingReading(tones, fitBlend(tones).minima, [0, 3], 0.3)).toBeUndefined();
});

test('separatingReading names a reading that does tell the mirror answers apart', () => {
	const tones = read([0]);
	const {minima} = fitBlend(tones);
	expect(minima.length).toBeGreaterThan(1);
	const next = separatingReading(tones, minima, [-6, -3, 0, 3, 6], 0.3)!;
	expect(next.addedDelayMs).not.toBe(0);
	expect(next.separation).toBeGreaterThan(3);
	// Taking it in the true room leaves one answer.
	const after = tones.map(tone =>
		tone.hertz === next.hertz
			? {
					...tone,
					both: [...tone.both, ...read([next.addedDelayMs]).find(({hertz}) => hertz === tone.hertz)!.both],
				}
			: tone,
	);
	expect(fitBlend(after).minima.length).toBe(1);
	expect(fitBlend(after).minima[0]!.arrivalMs).toBeCloseTo(2, 2);
});

test('separatingReading predicts nothing deeper than 15 dB below the louder side', () => {
	const tones = read([0]);
	const next = separatingReading(tones, fitBlend(tones).minima, [4.25], 0.3)!;
	for (const level of next.predictedDb) expect(level).toBeGreaterThan(75 - 15 - 0.5);
});
