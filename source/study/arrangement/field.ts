import {distance, type Vector} from '../survey/vectors.ts';
import type {RoomDraw} from './draws.ts';

/**
Responses from every source to every receiver in one draw, advanced by each source's own way to a reference point, so
that subs with delays by distance add up as they are. Index: (source · receivers + receiver) · frequencies + frequency.
*/
export type BassField = {
	readonly sources: number;
	readonly receivers: number;
	readonly frequenciesHertz: readonly number[];
	readonly real: Float64Array;
	readonly imaginary: Float64Array;
};

/** A place with the number under which its errors are drawn. */
export type Numbered = {readonly at: Vector; readonly number: number};

/** Shapes of the modes at places in one draw: sources keep theirs while receivers move. */
export const shapesAt = ({at}: RoomDraw, places: readonly Numbered[]): Float64Array[] =>
	places.map(one => at(one.at, one.number));

/**
Every response of one draw. The sums over modes are the whole cost of a search, so they run along memory.

@param align - The reference ear; sources are advanced by their ways to it.
@param sourceShapes - Shapes at the sources in this draw, where they are at hand.
*/
export function fieldOf(
	draw: RoomDraw,
	sources: readonly Numbered[],
	receivers: readonly Numbered[],
	align: Vector,
	speedOfSound: number,
	sourceShapes: readonly Float64Array[] = shapesAt(draw, sources),
): BassField {
	const {weights, at} = draw;
	const {frequenciesHertz} = weights;
	const count = frequenciesHertz.length;
	const size = sources.length * receivers.length * count;
	const real = new Float64Array(size);
	const imaginary = new Float64Array(size);
	const receiverShapes = receivers.map(one => at(one.at, one.number));
	const modes = sourceShapes[0]?.length ?? 0;
	const ways = sources.map(one => distance(one.at, align) / speedOfSound);
	const cosines = new Float64Array(sources.length * count);
	const sines = new Float64Array(sources.length * count);
	for (let s = 0; s < sources.length; s++) {
		for (let f = 0; f < count; f++) {
			const phase = 2 * Math.PI * frequenciesHertz[f]! * ways[s]!;
			cosines[s * count + f] = Math.cos(phase);
			sines[s * count + f] = Math.sin(phase);
		}
	}

	const weightedReal = new Float64Array(modes);
	const weightedImaginary = new Float64Array(modes);
	// 0 dB: one source's free field at 1 m.
	const scale = 4 * Math.PI;
	for (let r = 0; r < receivers.length; r++) {
		const receiver = receiverShapes[r]!;
		for (let f = 0; f < count; f++) {
			const base = f * modes;
			for (let n = 0; n < modes; n++) {
				weightedReal[n] = scale * receiver[n]! * weights.real[base + n]!;
				weightedImaginary[n] = scale * receiver[n]! * weights.imaginary[base + n]!;
			}

			for (let s = 0; s < sources.length; s++) {
				const source = sourceShapes[s]!;
				let sumReal = 0;
				let sumImaginary = 0;
				for (let n = 0; n < modes; n++) {
					sumReal += source[n]! * weightedReal[n]!;
					sumImaginary += source[n]! * weightedImaginary[n]!;
				}

				const cosine = cosines[s * count + f]!;
				const sine = sines[s * count + f]!;
				const index = (s * receivers.length + r) * count + f;
				real[index] = cosine * sumReal - sine * sumImaginary;
				imaginary[index] = cosine * sumImaginary + sine * sumReal;
			}
		}
	}

	return {sources: sources.length, receivers: receivers.length, frequenciesHertz, real, imaginary};
}

/** What one sub does beyond arriving together with the others at the reference seat. */
export type SubSetting = {readonly delayMs: number; readonly gainDb: number; readonly isInverted: boolean};

export const plainSetting: SubSetting = {delayMs: 0, gainDb: 0, isInverted: false};

/**
Levels at some receivers of some sources together, dB; one list a receiver.

@param picked - Which source plays for each sub.
@param settings - One for each of `picked`.
*/
export function togetherDb(
	field: BassField,
	picked: readonly number[],
	settings: readonly SubSetting[],
	receivers: readonly number[],
): number[][] {
	const {frequenciesHertz} = field;
	const count = frequenciesHertz.length;
	return receivers.map(r =>
		frequenciesHertz.map((hertz, f) => {
			let sumReal = 0;
			let sumImaginary = 0;
			for (const [i, source] of picked.entries()) {
				const {delayMs, gainDb, isInverted} = settings[i]!;
				const index = (source * field.receivers + r) * count + f;
				const factor = (isInverted ? -1 : 1) * 10 ** (gainDb / 20);
				const phase = (-2 * Math.PI * hertz * delayMs) / 1000;
				const cosine = factor * Math.cos(phase);
				const sine = factor * Math.sin(phase);
				sumReal += cosine * field.real[index]! - sine * field.imaginary[index]!;
				sumImaginary += cosine * field.imaginary[index]! + sine * field.real[index]!;
			}

			return 10 * Math.log10(Math.max(1e-12, sumReal * sumReal + sumImaginary * sumImaginary));
		}),
	);
}

/** What settings do to a source at every frequency: complex factors, for `quickBass`. */
export type Turn = {readonly real: Float64Array; readonly imaginary: Float64Array};

export function turnOf(frequenciesHertz: readonly number[], {delayMs, gainDb, isInverted}: SubSetting): Turn {
	const factor = (isInverted ? -1 : 1) * 10 ** (gainDb / 20);
	const phases = frequenciesHertz.map(hertz => (-2 * Math.PI * hertz * delayMs) / 1000);
	return {
		real: Float64Array.from(phases, phase => factor * Math.cos(phase)),
		imaginary: Float64Array.from(phases, phase => factor * Math.sin(phase)),
	};
}

/** What a search ranks by in one draw, dB, and the mean level. */
export type QuickBass = {readonly spreadDb: number; readonly outputDb: number};

/** Complex sums at every receiver and frequency of a field: receiver · frequencies + frequency. */
export type Sums = {readonly real: Float64Array; readonly imaginary: Float64Array};

export const emptySums = ({receivers, frequenciesHertz}: BassField): Sums => ({
	real: new Float64Array(receivers * frequenciesHertz.length),
	imaginary: new Float64Array(receivers * frequenciesHertz.length),
});

/** Adds one source to sums, with what its setting does to it where it has one. */
export function addSource({real, imaginary}: Sums, field: BassField, source: number, turn?: Turn): void {
	const size = real.length;
	const base = source * size;
	if (!turn) {
		for (let k = 0; k < size; k++) {
			real[k]! += field.real[base + k]!;
			imaginary[k]! += field.imaginary[base + k]!;
		}

		return;
	}

	const count = field.frequenciesHertz.length;
	for (let k = 0, f = 0; k < size; k++, f = f + 1 === count ? 0 : f + 1) {
		const a = field.real[base + k]!;
		const b = field.imaginary[base + k]!;
		real[k]! += turn.real[f]! * a - turn.imaginary[f]! * b;
		imaginary[k]! += turn.real[f]! * b + turn.imaginary[f]! * a;
	}
}

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
