import {type Box, distanceBetween, octaves, type Point, type Source} from './box.ts';
import {axesOf, eachImage, radiation} from './images.ts';
import {emptySpectrum, type Spectrum} from './spectrum.ts';

/** The octaves on both sides of a frequency, and how much of the upper one counts. */
export function octaveBlend(hertz: number): {
	readonly below: number;
	readonly above: number;
	readonly share: number;
} {
	const last = octaves.length - 1;
	const place = Math.min(last, Math.max(0, Math.log2(hertz / octaves[0])));
	const below = Math.min(last - 1, Math.floor(place));
	return {below, above: below + 1, share: place - below};
}

/** One impulse response for each octave needed, with frequency-independent walls within it. */
export type Paths = {
	readonly rate: number;
	/** By index of the octave; empty where not asked for. */
	readonly impulses: ReadonlyArray<Float64Array | undefined>;
};

/**
All images of a source at a receiver as sampled impulses of amplitude 1/r (1 at 1 m), each spread over four samples by
Lagrange's cubic: for frequencies below a tenth of the rate within 0.3 %, below a fifth within 4 %.

@param highestHertz - Up to where responses are asked for; sets the octaves that are kept.
*/
export function pathsOf(
	box: Box,
	source: Source,
	receiver: Point,
	{rate, lowestHertz, highestHertz}: {rate: number; lowestHertz: number; highestHertz: number},
): Paths {
	const first = octaveBlend(lowestHertz).below;
	const last = octaveBlend(highestHertz).above;
	const bands = box.reflections ? range(first, last) : [first];
	const length = Math.ceil(box.longestSeconds * rate) + 4;
	const sums = bands.map(() => new Float64Array(length));
	const perMetre = rate / box.speedOfSound;
	/** Weights of the four samples around the place of an arrival; the first sample's index, or −1 where it is outside. */
	const weights = new Float64Array(4);
	const spread = (metres: number): number => {
		const place = metres * perMetre;
		const at = Math.floor(place);
		if (at < 1 || at + 2 >= length) return -1;
		const mu = place - at;
		weights[0] = (-mu * (mu - 1) * (mu - 2)) / 6;
		weights[1] = ((mu + 1) * (mu - 1) * (mu - 2)) / 2;
		weights[2] = (-(mu + 1) * mu * (mu - 2)) / 2;
		weights[3] = ((mu + 1) * mu * (mu - 1)) / 6;
		return at - 1;
	};
	const add = (sum: Float64Array, first: number, gain: number) => {
		sum[first]! += gain * weights[0]!;
		sum[first + 1]! += gain * weights[1]!;
		sum[first + 2]! += gain * weights[2]!;
		sum[first + 3]! += gain * weights[3]!;
	};
	if (!box.reflections) {
		const metres = distanceBetween(source.at, receiver);
		const start = spread(metres);
		if (start >= 0) add(sums[0]!, start, directGain(source, receiver, metres));
		return {rate, impulses: octaves.map(() => sums[0])};
	}

	const axes = axesOf(box, source.at, receiver, bands);
	const [xs, ys, zs] = axes.map(({factors}) => factors) as [Float64Array[], Float64Array[], Float64Array[]];
	const isPlain = !source.dipoleAxis && !box.decayPerSecond;
	eachImage(box, axes, (metres, x, y, z) => {
		const start = spread(metres);
		if (start < 0) return;
		const gain = isPlain
			? 1 / metres
			: (radiation(source, axes, metres, x, y, z) * decayAt(box, metres)) / metres;
		for (let band = 0; band < sums.length; band++)
			add(sums[band]!, start, gain * xs[band]![x]! * ys[band]![y]! * zs[band]![z]!);
	});
	return {rate, impulses: octaves.map((_, octave) => sums[octave - first])};
}

/** Complex response at any frequencies, relative to the free field at 1 m. */
export function responseAt({rate, impulses}: Paths, frequencies: ArrayLike<number>): Spectrum {
	const spectrum = emptySpectrum(frequencies.length);
	for (let index = 0; index < frequencies.length; index++) {
		const {below, above, share} = octaveBlend(frequencies[index]!);
		const low = impulses[below]!;
		const high = impulses[above]!;
		const angle = (-2 * Math.PI * frequencies[index]!) / rate;
		const turnRe = Math.cos(angle);
		const turnIm = Math.sin(angle);
		let re = 1;
		let im = 0;
		let sumRe = 0;
		let sumIm = 0;
		for (let at = 0; at < low.length; at++) {
			const value = low[at]! + share * (high[at]! - low[at]!);
			sumRe += value * re;
			sumIm += value * im;
			const next = re * turnRe - im * turnIm;
			im = re * turnIm + im * turnRe;
			re = next;
		}

		spectrum.re[index] = sumRe;
		spectrum.im[index] = sumIm;
	}

	return spectrum;
}

/** The same response as the plain sum over images, without sampling: slow, to check the fast way. */
export function imageSum(
	box: Box,
	source: Source,
	receiver: Point,
	frequencies: readonly number[],
): Spectrum {
	const spectrum = emptySpectrum(frequencies.length);
	const axes = axesOf(box, source.at, receiver, range(0, octaves.length - 1));
	const [xs, ys, zs] = axes;
	const blends = frequencies.map(octaveBlend);
	eachImage(box, axes, (metres, x, y, z) => {
		const gain = (radiation(source, axes, metres, x, y, z) * decayAt(box, metres)) / metres;
		for (const [index, hertz] of frequencies.entries()) {
			const {below, above, share} = blends[index]!;
			const at = (band: number) => xs.factors[band]![x]! * ys.factors[band]![y]! * zs.factors[band]![z]!;
			const amplitude = gain * ((1 - share) * at(below) + share * at(above));
			const angle = (-2 * Math.PI * hertz * metres) / box.speedOfSound;
			spectrum.re[index]! += amplitude * Math.cos(angle);
			spectrum.im[index]! += amplitude * Math.sin(angle);
		}
	});
	return spectrum;
}

const decayAt = ({decayPerSecond, speedOfSound}: Box, metres: number): number =>
	decayPerSecond ? Math.exp((-decayPerSecond * metres) / speedOfSound) : 1;

function directGain({at, dipoleAxis}: Source, receiver: Point, metres: number): number {
	if (!dipoleAxis) return 1 / metres;
	const along = dipoleAxis.reduce((sum, part, axis) => sum + part * (receiver[axis]! - at[axis]!), 0);
	return along / (metres * Math.hypot(...dipoleAxis)) / metres;
}

const range = (first: number, last: number): number[] =>
	Array.from({length: last - first + 1}, (_, index) => first + index);
