export type CountedBursts = {
	/** Noise that the bursts are cut from, any length, repeated as needed. */
	readonly noise: Float64Array;
	readonly sampleRateHz: number;
	/** How many bursts, ≥ 1. */
	readonly count: number;
};

const burstSeconds = 0.12;
const betweenSeconds = 0.12;
/** A longer gap after each five lets high counts be told by groups. */
const groupOf = 5;
const groupGapSeconds = 0.3;
const pauseSeconds = 1;
const edgeSeconds = 0.02;

/** Starts of the bursts, seconds. */
function starts(count: number): number[] {
	return Array.from(
		{length: count},
		(_, index) => index * (burstSeconds + betweenSeconds) + Math.floor(index / groupOf) * groupGapSeconds,
	);
}

/** Length of the bursts and the pause after them, seconds. */
export function countedSeconds(count: number): number {
	return starts(count).at(-1)! + burstSeconds + pauseSeconds;
}

/**
A channel told by counting: as many short bursts of noise as its place in the file, in groups of five, then a pause.
Each burst swells and fades over 20 ms, so that none clicks, and the end is silent, so that it loops.

@returns As many samples as the bursts and the pause take.
*/
export function countedBursts({noise, sampleRateHz, count}: CountedBursts): Float64Array {
	const samples = new Float64Array(Math.round(countedSeconds(count) * sampleRateHz));
	const burst = Math.round(burstSeconds * sampleRateHz);
	const edge = Math.round(edgeSeconds * sampleRateHz);
	for (const [number, start] of starts(count).entries()) {
		const from = Math.round(start * sampleRateHz);
		for (let index = 0; index < burst; index += 1) {
			const fromEnd = Math.min(index, burst - 1 - index);
			const swell = fromEnd >= edge ? 1 : 0.5 - 0.5 * Math.cos((Math.PI * fromEnd) / edge);
			samples[from + index] = swell * noise[(number * burst + index) % noise.length]!;
		}
	}

	return samples;
}
