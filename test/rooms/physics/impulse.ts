import FFT from 'fft.js';
import {type Box, octaves, type Point, type Source} from './box.ts';
import {octaveBlend, pathsOf} from './transfer.ts';

/**
Impulse response from a source to a point, for making recordings: amplitude 1 is the free field at 1 m, sample 0 the
moment of emission. Octaves with walls of their own are put together in the spectrum, so that each blends into the next
without a step; the highest twentieth of the spectrum fades out.

@param rate - Samples a second, such as 48 000.
@param shape - What else the sound goes through: complex factor at a frequency (speaker, microphone); 1 where not given.
*/
export function impulseResponse(
	box: Box,
	source: Source,
	receiver: Point,
	rate: number,
	shape?: (frequencies: Float64Array) => {readonly re: Float64Array; readonly im: Float64Array},
): Float64Array {
	const {impulses} = pathsOf(box, source, receiver, {rate, lowestHertz: octaves[0], highestHertz: rate / 2});
	const size = 2 ** Math.ceil(Math.log2(impulses.find(one => one)!.length * 1.25));
	const fft = new FFT(size);
	const distinct = [...new Set(impulses)];
	const spectra = new Map(
		distinct.map(one => {
			const padded = new Array<number>(size).fill(0);
			for (const [index, value] of one!.entries()) padded[index] = value;
			const out = fft.createComplexArray() as number[];
			fft.realTransform(out, padded);
			return [one, out] as const;
		}),
	);
	const frequencies = Float64Array.from({length: size / 2 + 1}, (_, bin) => (bin * rate) / size);
	const factor = shape?.(frequencies);
	const sum = fft.createComplexArray() as number[];
	sum.fill(0);
	for (const [bin, hertz] of frequencies.entries()) {
		const {below, above, share} = octaveBlend(Math.max(1, hertz));
		const low = spectra.get(impulses[below])!;
		const high = spectra.get(impulses[above])!;
		const fade = Math.min(1, (rate / 2 - hertz) / (rate / 40));
		const re = fade * ((1 - share) * low[2 * bin]! + share * high[2 * bin]!);
		const im = fade * ((1 - share) * low[2 * bin + 1]! + share * high[2 * bin + 1]!);
		const c = factor?.re[bin] ?? 1;
		const d = factor?.im[bin] ?? 0;
		sum[2 * bin] = re * c - im * d;
		sum[2 * bin + 1] = bin === 0 || bin === size / 2 ? 0 : re * d + im * c;
	}

	fft.completeSpectrum(sum);
	const out = fft.createComplexArray() as number[];
	fft.inverseTransform(out, sum);
	return Float64Array.from({length: size}, (_, index) => out[2 * index]!);
}
