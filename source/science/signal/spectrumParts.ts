/** Spectra here are shape (n + 2): real and imaginary part of bins 0…n/2 by turns, as `forwardReal` makes them. */

/** A band with soft edges: it opens from the first to the second frequency and closes from the third to the fourth. */
export type SoftBand = readonly [opens: number, open: number, closes: number, closed: number];

/** Weight of a soft band at a frequency, 0 to 1. */
export function bandWeight(band: SoftBand, hertz: number): number {
	return weightBy(band, Math.log(band[1] / band[0]), Math.log(band[3] / band[2]), hertz);
}

/**
Weight by the widths of the edges, as logarithms, which many frequencies share: smooth steps, half a cosine over the
logarithm of frequency.
*/
function weightBy(
	[opens, open, closes, closed]: SoftBand,
	opening: number,
	closing: number,
	hertz: number,
): number {
	if (hertz <= opens || hertz >= closed) return 0;
	const up = hertz >= open ? 1 : 0.5 - 0.5 * Math.cos((Math.PI * Math.log(hertz / opens)) / opening);
	if (hertz <= closes) return up;
	return up * (1 - (0.5 - 0.5 * Math.cos((Math.PI * Math.log(hertz / closes)) / closing)));
}

/**
Weights of a soft band at every bin.

@param bins - n/2 + 1.
@param binHertz - Distance of two bins.
*/
export function bandWeights(band: SoftBand, bins: number, binHertz: number): Float64Array {
	const weights = new Float64Array(bins);
	const first = Math.max(1, Math.floor(band[0] / binHertz));
	const last = Math.min(bins - 1, Math.ceil(band[3] / binHertz));
	const opening = Math.log(band[1] / band[0]);
	const closing = Math.log(band[3] / band[2]);
	for (let bin = first; bin <= last; bin += 1)
		weights[bin] = weightBy(band, opening, closing, bin * binHertz);
	return weights;
}

/** A spectrum times real weights, one a bin; a new one. */
export function weighted(spectrum: Float64Array, weights: Float64Array): Float64Array {
	const result = new Float64Array(spectrum.length);
	for (let bin = 0; bin < weights.length; bin += 1) {
		const weight = weights[bin]!;
		if (weight === 0) continue;
		result[2 * bin] = weight * spectrum[2 * bin]!;
		result[2 * bin + 1] = weight * spectrum[2 * bin + 1]!;
	}

	return result;
}

/** The next power of two that holds so many samples. */
export function powerOfTwoFrom(length: number): number {
	let size = 4;
	while (size < length) size *= 2;
	return size;
}
