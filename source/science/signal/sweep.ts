/**
Law of a synchronised exponential sweep: x(t) = sin(2π f1 L e^(t/L)) with f1·L a whole number, so that the harmonics
that a loudspeaker adds start in phase with it and stand apart from the impulse response, ahead of it by L·ln n.

@see A. Novak, P. Lotton, L. Simon, Synchronized swept-sine: theory, application, and implementation, J. Audio Eng. Soc.
63 (2015) 786–798: L = round(f1·T/ln(f2/f1))/f1.
*/
export type SweepLaw = {
	readonly fromHertz: number;
	readonly toHertz: number;
	/** L: the frequency grows by e in this time, seconds. */
	readonly rateSeconds: number;
	/** Length, seconds: L·ln(f2/f1). */
	readonly seconds: number;
	/** Frequencies up to which it swells and from which it fades. */
	readonly swellsToHertz: number;
	readonly fadesFromHertz: number;
};

/** How far the sweep swells at its low and fades at its high end, octaves: short, and still without a click. */
const swellOctaves = 0.4;
const fadeOctaves = 1 / 12;

/**
The law nearest to a length.

@param fromHertz - f1 > 0.
@param toHertz - f2 > f1.
@param aboutSeconds - Length that is aimed at; the true one differs by up to ln(f2/f1)/(2·f1).
@throws {RangeError} If the frequencies are not in order or the time is too short for one period at the start.
*/
export function synchronisedSweep(fromHertz: number, toHertz: number, aboutSeconds: number): SweepLaw {
	if (!(fromHertz > 0 && toHertz > fromHertz))
		throw new RangeError(`0 < fromHertz < toHertz must hold, got ${fromHertz} and ${toHertz}`);
	const octaves = Math.log(toHertz / fromHertz);
	const periods = Math.round((fromHertz * aboutSeconds) / octaves);
	if (periods < 1)
		throw new RangeError(`aboutSeconds must be at least ${octaves / fromHertz}, got ${aboutSeconds}`);
	const rateSeconds = periods / fromHertz;
	return {
		fromHertz,
		toHertz,
		rateSeconds,
		seconds: rateSeconds * octaves,
		swellsToHertz: fromHertz * 2 ** swellOctaves,
		fadesFromHertz: toHertz * 2 ** -fadeOctaves,
	};
}

/** Frequency at a time from the start, hertz: f1·e^(t/L). */
export function sweepFrequency({fromHertz, rateSeconds}: SweepLaw, seconds: number): number {
	return fromHertz * Math.exp(seconds / rateSeconds);
}

/** When the sweep passes a frequency, seconds from its start. */
export function sweepTime({fromHertz, rateSeconds}: SweepLaw, hertz: number): number {
	return rateSeconds * Math.log(hertz / fromHertz);
}

/** How far ahead of the impulse response that of a harmonic stands, seconds: L·ln n. @see Farina (2000), Novak (2015). */
export function harmonicLead({rateSeconds}: SweepLaw, harmonic: number): number {
	return rateSeconds * Math.log(harmonic);
}

/**
The sweep as a recorder would sample it that hears nothing but the signal: the law is evaluated at the recorder's own
times, so that neither its rate nor its clock asks for resampling.

@param sampleRateHz - Samples in one second of the player's clock; need not be whole.
@param startSample - Where the sweep starts, samples from the first sample returned; need not be whole.
@param length - Samples to return.
@returns Shape (length), peak 1; silent outside the sweep and above 0.49 of the sample rate.
*/
export function sweepSamples(
	law: SweepLaw,
	sampleRateHz: number,
	startSample: number,
	length: number,
): Float64Array {
	const {fromHertz, rateSeconds, seconds} = law;
	const samples = new Float64Array(length);
	const swell = sweepTime(law, law.swellsToHertz);
	const fadesFrom = Math.min(sweepTime(law, law.fadesFromHertz), sweepTime(law, 0.46 * sampleRateHz));
	const ends = Math.min(seconds, sweepTime(law, 0.49 * sampleRateHz));
	const first = Math.max(0, Math.ceil(startSample));
	const last = Math.min(length - 1, Math.floor(startSample + ends * sampleRateHz));
	// The argument grows by one factor a sample; taking it anew each 64 samples keeps it exact to rounding.
	const factor = Math.exp(1 / (sampleRateHz * rateSeconds));
	let argument = 0;
	for (let index = first; index <= last; index += 1) {
		const time = (index - startSample) / sampleRateHz;
		argument =
			(index - first) % 64 === 0
				? 2 * Math.PI * fromHertz * rateSeconds * Math.exp(time / rateSeconds)
				: argument * factor;
		let size = 1;
		if (time < swell) size = 0.5 - 0.5 * Math.cos((Math.PI * time) / swell);
		else if (time > fadesFrom)
			size = 0.5 + 0.5 * Math.cos((Math.PI * (time - fadesFrom)) / (ends - fadesFrom));
		samples[index] = size * Math.sin(argument);
	}

	return samples;
}
