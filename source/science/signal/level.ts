/**
Root mean square of a signal in dBFS: 0 dBFS is the RMS of a sine whose peaks reach full scale, so that a full-scale
square is +3.01 dBFS.

@see AES17-2015, definition of full scale.
*/
export function levelDbfs(samples: Float64Array): number {
	let sum = 0;
	for (let index = 0; index < samples.length; index += 1) sum += samples[index]! * samples[index]!;
	return 10 * Math.log10((2 * sum) / samples.length);
}

/** Root mean square, full scale = 1, of a level in dBFS as above. */
export function rmsOfDbfs(decibels: number): number {
	return 10 ** (decibels / 20) / Math.SQRT2;
}

/** Largest magnitude. */
export function peakOf(samples: Float64Array): number {
	let peak = 0;
	for (let index = 0; index < samples.length; index += 1) {
		const size = Math.abs(samples[index]!);
		if (size > peak) peak = size;
	}

	return peak;
}

/** Crest: peak over RMS, dB. A sine has 3.01 dB, pink noise left to itself 12 to 13 dB. */
export function crestDb(samples: Float64Array): number {
	return 20 * Math.log10(peakOf(samples)) - (levelDbfs(samples) - 10 * Math.log10(2));
}

/** Brings a signal to a level, in place. */
export function setLevel(samples: Float64Array, decibels: number): Float64Array {
	const factor = 10 ** ((decibels - levelDbfs(samples)) / 20);
	for (let index = 0; index < samples.length; index += 1) samples[index] = samples[index]! * factor;
	return samples;
}
