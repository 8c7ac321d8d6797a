/** One level of both together, with what was changed for it. */
export type BothReading = {
	readonly decibels: number;
	readonly sigmaDb: number;
	/** Delay of the moved group above that of the standing settings, ms. */
	readonly delayMs: number;
	/** Whether the polarity between the two was other than in the standing settings. */
	readonly inverted: boolean;
	/** Level of each group in that reading above that of the standing settings, dB. */
	readonly stillOffsetDb: number;
	readonly movedOffsetDb: number;
	/** Place in the profile's list of meter readings, for messages. */
	readonly index: number;
};

/** All that was read at one tone. */
export type BlendTone = {
	readonly hertz: number;
	/** Each group alone under the standing settings, dB, with its standard uncertainty. */
	readonly stillDb: number;
	readonly stillSigmaDb: number;
	readonly movedDb: number;
	readonly movedSigmaDb: number;
	/** Known phase of the moved group ahead of the still one by filters and boxes, radians. */
	readonly knownPhase: number;
	readonly both: readonly BothReading[];
};

/**
Phase of the moved group against the still one.

φ(f) = ψ(f) − 2πf(τ + δ) + π·inverted

@param arrivalMs - τ: arrival of the moved group after the still one under the standing settings.
@param addedMs - δ: delay of the moved group above that.
@returns Radians.
*/
export function phaseBetween(
	tone: Pick<BlendTone, 'hertz' | 'knownPhase'>,
	arrivalMs: number,
	addedMs: number,
	inverted: boolean,
): number {
	return (
		tone.knownPhase - 2 * Math.PI * tone.hertz * ((arrivalMs + addedMs) / 1000) + (inverted ? Math.PI : 0)
	);
}
