import {expect, test} from 'vitest';
import {bothLevelDb} from '../../../../source/study/calibration/blend/cosine.ts';
import {fitBlend} from '../../../../source/study/calibration/blend/fit.ts';
import type {BlendTone} from '../../../../source/study/calibration/blend/tones.ts';
import {normal, seeded} from './room.ts';

type Case = {
	readonly hertz: readonly number[];
	readonly delaysMs: readonly number[];
	readonly sigmaDb: number;
	readonly arrivalMs: number;
	readonly inverted: boolean;
	readonly levels: () => number;
	readonly phase: () => number;
	readonly noise: () => number;
};

function readTones({hertz, delaysMs, sigmaDb, arrivalMs, inverted, levels, phase, noise}: Case): BlendTone[] {
	return hertz.map(f => {
		const [still, moved, knownPhase] = [levels(), levels(), phase()];
		return {
			hertz: f,
			stillDb: still + sigmaDb * noise(),
			movedDb: moved + sigmaDb * noise(),
			stillSigmaDb: sigmaDb,
			movedSigmaDb: sigmaDb,
			knownPhase,
			both: delaysMs.map((delayMs, index) => {
				const angle =
					knownPhase - (2 * Math.PI * f * (arrivalMs + delayMs)) / 1000 + (inverted ? Math.PI : 0);
				return {
					decibels: bothLevelDb(still, moved, Math.cos(angle)) + sigmaDb * noise(),
					sigmaDb,
					delayMs,
					inverted: false,
					stillOffsetDb: 0,
					movedOffsetDb: 0,
					index,
				};
			}),
		};
	});
}

const exact = {levels: () => 75, phase: () => 0.4, noise: () => 0};

test('fitBlend has no answer without a reading of both', () => {
	expect(fitBlend([]).minima).toEqual([]);
	expect(
		fitBlend(readTones({...exact, hertz: [80], delaysMs: [], sigmaDb: 0.5, arrivalMs: 1, inverted: false}))
			.minima,
	).toEqual([]);
});

test('fitBlend finds arrival and polarity from three tones at two delays without noise', () => {
	const fit = fitBlend(
		readTones({
			...exact,
			hertz: [64, 80, 100],
			delaysMs: [0, 3],
			sigmaDb: 0.3,
			arrivalMs: -4.2,
			inverted: true,
		}),
	);
	expect(fit.minima.length).toBe(1);
	expect(fit.minima[0]).toMatchObject({inverted: true});
	expect(fit.minima[0]!.arrivalMs).toBeCloseTo(-4.2, 3);
	expect(fit.minima[0]!.chiSquare).toBeLessThan(1e-4);
});

// The cosine is even: with one tone and one delay the phases φ and −φ, every period, and both polarities half a
// period away read alike.
test('fitBlend lists the mirror answers of a single tone, all periods of them', () => {
	const {minima} = fitBlend(
		readTones({
			...exact,
			phase: () => 0,
			hertz: [80],
			delaysMs: [0],
			sigmaDb: 0.2,
			arrivalMs: 2,
			inverted: false,
		}),
	);
	for (const expected of [2, -2, 2 - 12.5, 12.5 - 2]) {
		expect(minima.some(({inverted, arrivalMs}) => !inverted && Math.abs(arrivalMs - expected) < 0.05)).toBe(
			true,
		);
	}

	// Half a period away with the polarity turned.
	for (const expected of [2 + 6.25, 2 - 6.25, -2 + 6.25, -2 - 6.25]) {
		expect(minima.some(({inverted, arrivalMs}) => inverted && Math.abs(arrivalMs - expected) < 0.05)).toBe(
			true,
		);
	}
});

test('fitBlend tells the mirror apart as soon as the delay was moved by a known amount', () => {
	const {minima} = fitBlend(
		readTones({
			...exact,
			phase: () => 0,
			hertz: [80],
			delaysMs: [0, 3],
			sigmaDb: 0.2,
			arrivalMs: 2,
			inverted: false,
		}),
	);
	expect(minima.some(({inverted, arrivalMs}) => !inverted && Math.abs(arrivalMs - 2) < 0.05)).toBe(true);
	expect(minima.some(({inverted, arrivalMs}) => !inverted && Math.abs(arrivalMs + 2) < 0.2)).toBe(false);
});

test('fitBlend widens its answers where readings miss one delay by far more than noise', () => {
	const tones = readTones({
		...exact,
		hertz: [64, 80, 100],
		delaysMs: [0, 3],
		sigmaDb: 0.2,
		arrivalMs: 1,
		inverted: false,
	});
	const bent = tones.map((tone, index) => ({
		...tone,
		both: tone.both.map((reading, at) =>
			at === 1 ? {...reading, decibels: reading.decibels + 2 * index - 2} : reading,
		),
	}));
	const fit = fitBlend(bent);
	expect(fit.probability).toBeLessThan(0.01);
	expect(fit.scale).toBeGreaterThan(2);
	expect(fit.minima[0]!.sigmaMs).toBeGreaterThan(3 * fitBlend(tones).minima[0]!.sigmaMs);
});

/**
Coverage: the answers together claim 95.45 %. Of 250 simulated rooms a right claim misses 250·0.0455 = 11.4 in the
mean, with a standard deviation of √(250·0.0455·0.9545) = 3.3. Between 2 and 22 misses is within about 3 standard
deviations either way: a claim that were really 90 % would miss 25 in the mean, one of 99.9 % would miss none.
*/
test.each([
	[0.2, [64, 80, 100], [0]],
	[0.2, [64, 80, 100], [0, 3]],
	[0.5, [64, 80, 100], [0, 3]],
	[1, [64, 80, 100], [0, 3]],
	[1, [64, 80, 100], [0]],
	[0.5, [80], [0, 3]],
	[0.5, [64, 100], [0, -3]],
])(
	'fitBlend holds the truth as often as it claims, with %f dB of noise, tones %j and delays %j',
	(sigmaDb, hertz, delaysMs) => {
		const random = seeded(20_260_418);
		const noise = normal(random);
		const rooms = 250;
		let missed = 0;
		for (let room = 0; room < rooms; room += 1) {
			const arrivalMs = (random() * 2 - 1) * 14;
			const inverted = random() < 0.5;
			const {minima} = fitBlend(
				readTones({
					hertz,
					delaysMs,
					sigmaDb,
					arrivalMs,
					inverted,
					levels: () => 70 + 8 * random(),
					phase: () => 2 * Math.PI * random(),
					noise,
				}),
			);
			const isHeld = minima.some(
				answer => answer.inverted === inverted && answer.fromMs <= arrivalMs && arrivalMs <= answer.toMs,
			);
			if (!isHeld) missed += 1;
		}

		expect(missed).toBeGreaterThanOrEqual(2);
		expect(missed).toBeLessThanOrEqual(22);
	},
);
