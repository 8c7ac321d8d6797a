import type {Remark} from '../result.ts';
import {inDb, number, remark} from '../words.ts';
import {bothLevelDb, cosineFromLevels, cosineSigma, largestLevelDifferenceDb} from './cosine.ts';
import type {BlendTone, BothReading} from './tones.ts';

/** Standard deviations beyond ±1 from which noise no longer explains a cosine. */
const beyondSigmas = 3;

/** What one reading of both says of the phase. */
export type CosineReading = {
	readonly addedMs: number;
	readonly inverted: boolean;
	readonly bothDb: number;
	/** May lie outside ±1 by noise. */
	readonly cosine: number;
	readonly sigma: number;
	/** `too loud` and `too quiet`: no phase gives that level, and noise does not explain it. */
	readonly verdict: 'fine' | 'too loud' | 'too quiet';
	/** Place in the profile's list of meter readings. */
	readonly index: number;
};

/** The cosine that one reading of both gives, and whether it is possible at all. */
export function judgeCosine(tone: BlendTone, reading: BothReading): CosineReading {
	const stillDb = tone.stillDb + reading.stillOffsetDb;
	const movedDb = tone.movedDb + reading.movedOffsetDb;
	const cosine = cosineFromLevels(reading.decibels, stillDb, movedDb);
	const sigmas = [reading.sigmaDb, tone.stillSigmaDb, tone.movedSigmaDb] as const;
	const sigma = cosineSigma(reading.decibels, stillDb, movedDb, sigmas);
	// At the limit itself the slope is taken where the claim is tested: in a cancellation the reading's own is nearly 0.
	const limit = Math.sign(cosine);
	const sigmaAtLimit = cosineSigma(bothLevelDb(stillDb, movedDb, limit), stillDb, movedDb, sigmas);
	const excess = Math.abs(cosine) - 1;
	const isImpossible = excess > beyondSigmas * Math.max(sigma, sigmaAtLimit);
	return {
		addedMs: reading.delayMs,
		inverted: reading.inverted,
		bothDb: reading.decibels,
		cosine,
		sigma,
		verdict: isImpossible ? (cosine > 0 ? 'too loud' : 'too quiet') : 'fine',
		index: reading.index,
	};
}

/** In words, why three levels cannot belong together. */
export function impossibleRemark(tone: BlendTone, reading: CosineReading, about: string): Remark {
	const loudest = bothLevelDb(tone.stillDb, tone.movedDb, 1);
	const quietest = bothLevelDb(tone.stillDb, tone.movedDb, -1);
	const [limit, beyond, causes] =
		reading.verdict === 'too loud'
			? [
					`at most ${inDb(loudest)}`,
					reading.bothDb - loudest,
					'another sound in the room, a third speaker still playing, the master volume turned up, or a single reading taken with a wrong plug or after compression',
				]
			: [
					`at least ${inDb(quietest)}`,
					quietest - reading.bothDb,
					'a limiter or compression acting when both play, one of the two unplugged or muted, or the master volume turned down',
				];
	return remark(
		'problem',
		`levels-${reading.verdict.replace(' ', '-')}`,
		`${number(tone.hertz, 0)} Hz, meter reading ${reading.index + 1}: both together can make ${limit} from ${inDb(tone.stillDb)} and ${inDb(tone.movedDb)}, but read ${inDb(Math.abs(beyond))} beyond. Likely: ${causes}. Check, and take all three again.`,
		about,
	);
}

/** Whether the levels alone are near enough to each other for their phase to show. */
export function isPhaseSeen({stillDb, movedDb}: BlendTone): boolean {
	return Math.abs(stillDb - movedDb) <= largestLevelDifferenceDb;
}

export function unseenRemark(tone: BlendTone, about: string): Remark {
	return remark(
		'doubt',
		'phase-not-seen',
		`${number(tone.hertz, 0)} Hz: ${inDb(tone.stillDb)} and ${inDb(tone.movedDb)} are more than ${largestLevelDifferenceDb} dB apart, so their phase hardly shows. The tone was left out; take one nearer to the crossover.`,
		about,
	);
}
