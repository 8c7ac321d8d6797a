import {sumLevel, type ToneSum} from './toneSum.ts';

/** How all subs together are set: their arrival after the front speakers, and polarity. */
export type Offset = {readonly laterMs: number; readonly inverted: boolean};

/** The tones of each front speaker. */
export type FrontSums = ReadonlyMap<string, readonly ToneSum[]>;

/** Nearer than this the smaller change wins: less than anyone hears, and than the readings tell, dB. */
const drawDb = 0.05;
/** Fineness of the search where the boxes' own steps are finer, ms. */
const leastStepMs = 0.1;

/** Mean level over the tones of each front speaker, then over the speakers, dB. */
export function meanLevelDb(sums: FrontSums, {laterMs, inverted}: Offset): number {
	const fronts = [...sums.values()].filter(tones => tones.length > 0);
	const total = fronts.reduce(
		(sum, tones) =>
			sum + tones.reduce((all, tone) => all + sumLevel(tone, laterMs, inverted).value, 0) / tones.length,
		0,
	);
	return total / fronts.length;
}

export type BestOffset = Offset & {
	/** Mean level gained against what stands, dB, with what the readings leave open. */
	readonly gainDb: {readonly value: number; readonly sigma: number};
};

/**
The delay and polarity of all subs with the loudest mean over tones and front speakers.

@param stands - What the gain is against.
@param farthestMs - No delay farther from what stands is sought, ms.
@param stepMs - Of the box that makes the delay, ms.
@param isReached - Whether the boxes can make a delay.
*/
export function bestOffset(
	sums: FrontSums,
	stands: Offset,
	farthestMs: number,
	stepMs: number,
	isReached: (laterMs: number) => boolean = () => true,
): BestOffset {
	const step = Math.max(stepMs, leastStepMs);
	const most = Math.floor(farthestMs / step + 1e-9);
	const nowDb = meanLevelDb(sums, stands);
	let best: Offset = stands;
	let bestDb = nowDb;
	// From what stands outwards, as it is turned before the other way round: a draw goes to the smaller change.
	for (let count = 0; count <= most; count++) {
		for (const inverted of [stands.inverted, !stands.inverted]) {
			for (const side of count === 0 ? [1] : [1, -1]) {
				const offset = {laterMs: stands.laterMs + side * count * step, inverted};
				if (!isReached(offset.laterMs)) continue;
				const level = meanLevelDb(sums, offset);
				if (level > bestDb + drawDb) [best, bestDb] = [offset, level];
			}
		}
	}

	return {...best, gainDb: {value: bestDb - nowDb, sigma: gainSigmaDb(sums, stands, best)}};
}

/** Each tone's readings are independent of the others', so their shares add in square. */
export function gainSigmaDb(sums: FrontSums, from: Offset, to: Offset): number {
	const fronts = [...sums.values()].filter(tones => tones.length > 0);
	const square = fronts.reduce(
		(sum, tones) =>
			sum +
			tones.reduce((all, tone) => {
				const before = sumLevel(tone, from.laterMs, from.inverted).sigma;
				const after = sumLevel(tone, to.laterMs, to.inverted).sigma;
				return all + (before ** 2 + after ** 2) / tones.length ** 2;
			}, 0),
		0,
	);
	return Math.sqrt(square) / fronts.length;
}
