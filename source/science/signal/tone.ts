import {rmsOfDbfs} from './level.ts';

export type Tone = {
	readonly hertz: number;
	readonly sampleRateHz: number;
	/** Length, samples. */
	readonly length: number;
	readonly levelDbfs: number;
};

/** Greatest common divisor of two whole numbers, not both 0. */
function commonDivisor(one: number, other: number): number {
	let [a, b] = [one, other];
	while (b > 0) [a, b] = [b, a % b];
	return a;
}

/** The frequency nearest to the one asked for of which a whole number of periods fits, hertz. */
export function wholePeriodsHertz({hertz, sampleRateHz, length}: Omit<Tone, 'levelDbfs'>): number {
	return (Math.max(1, Math.round((hertz * length) / sampleRateHz)) * sampleRateHz) / length;
}

/**
A sine of a whole number of periods, so that it loops without a click.

@returns Shape (length). At 5 s every multiple of 0.2 Hz is exact; others move to the nearest of them.
@throws {RangeError} If the frequency is not between 0 and half the sample rate.
*/
export function tone({hertz, sampleRateHz, length, levelDbfs}: Tone): Float64Array {
	if (!(hertz > 0 && hertz < sampleRateHz / 2))
		throw new RangeError(`hertz must lie between 0 and ${sampleRateHz / 2} Hz, got ${hertz}`);
	const periods = Math.round(wholePeriodsHertz({hertz, sampleRateHz, length}) * (length / sampleRateHz));
	const amplitude = Math.SQRT2 * rmsOfDbfs(levelDbfs);
	const samples = new Float64Array(length);
	// What repeats exactly is computed once.
	const block = length / commonDivisor(periods, length);
	const step = (2 * Math.PI * periods) / length;
	for (let index = 0; index < block; index += 1) samples[index] = amplitude * Math.sin(step * index);
	for (let done = block; done < length; done += block)
		samples.copyWithin(done, 0, Math.min(block, length - done));
	return samples;
}
