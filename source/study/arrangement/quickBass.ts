import type {BassField, Sums} from './field.ts';

/** What a search ranks by in one draw, dB, and the mean level. */
export type QuickBass = {readonly spreadDb: number; readonly outputDb: number};

/** Decibels of one neper of power. */
const perNeper = 10 / Math.LN10;

/**
Mean over the frequencies of the deviation between receivers, dB: the measure of a search, written out for speed, and the
mean level. With one receiver: the deviation over the frequencies.
*/
export function quickBass({real, imaginary}: Sums, receivers: number): QuickBass {
	const count = real.length / receivers;
	let total = 0;
	let sumAll = 0;
	let squareAll = 0;
	for (let f = 0; f < count; f++) {
		let sum = 0;
		let square = 0;
		for (let k = f; k < real.length; k += count) {
			const a = real[k]!;
			const b = imaginary[k]!;
			const level = Math.log(a * a + b * b + 1e-12);
			sum += level;
			square += level * level;
		}

		const mean = sum / receivers;
		total += Math.sqrt(Math.max(0, square / receivers - mean * mean));
		sumAll += mean;
		squareAll += mean * mean;
	}

	const mean = sumAll / count;
	const nepers = receivers > 1 ? total / count : Math.sqrt(Math.max(0, squareAll / count - mean * mean));
	return {spreadDb: perNeper * nepers, outputDb: perNeper * mean};
}

/**
The spread alone over some receivers of one more source on top of sums, dB, counted as long as it stays below a limit;
undefined from there on, as no frequency takes anything away. Levels count against the first receiver's: one logarithm
fewer.

@param before - Sums of all other sources.
@param limitDb - Of the mean over the frequencies.
*/
export function spreadBelow(
	before: Sums,
	field: BassField,
	source: number,
	limitDb: number,
): number | undefined {
	const {receivers, frequenciesHertz} = field;
	const count = frequenciesHertz.length;
	const size = count * receivers;
	const base = source * size;
	const {real, imaginary} = before;
	const limit = (limitDb * count) / perNeper;
	let total = 0;
	for (let f = 0; f < count; f++) {
		const a = real[f]! + field.real[base + f]!;
		const b = imaginary[f]! + field.imaginary[base + f]!;
		const first = 1 / (a * a + b * b + 1e-12);
		let sum = 0;
		let square = 0;
		for (let k = f + count; k < size; k += count) {
			const c = real[k]! + field.real[base + k]!;
			const d = imaginary[k]! + field.imaginary[base + k]!;
			const level = Math.log((c * c + d * d + 1e-12) * first);
			sum += level;
			square += level * level;
		}

		const mean = sum / receivers;
		total += Math.sqrt(Math.max(0, square / receivers - mean * mean));
		if (total >= limit) return undefined;
	}

	return (perNeper * total) / count;
}
