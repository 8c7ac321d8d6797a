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

/**
Every response of one draw. The sums over modes are the whole cost of a search, so they run along memory.

@param align - The reference ear; sources are advanced by their ways to it.
*/
export function fieldOf(
	{weights, at}: RoomDraw,
	sources: readonly Numbered[],
	receivers: readonly Numbered[],
	align: Vector,
	speedOfSound: number,
): BassField {
	const {frequenciesHertz} = weights;
	const count = frequenciesHertz.length;
	const size = sources.length * receivers.length * count;
	const real = new Float64Array(size);
	const imaginary = new Float64Array(size);
	const sourceShapes = sources.map(one => at(one.at, one.number));
	const receiverShapes = receivers.map(one => at(one.at, one.number));
	const modes = sourceShapes[0]?.length ?? 0;
	const ways = sources.map(one => distance(one.at, align) / speedOfSound);
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

				const phase = 2 * Math.PI * frequenciesHertz[f]! * ways[s]!;
				const [cosine, sine] = [Math.cos(phase), Math.sin(phase)];
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

/**
Mean over the frequencies of the deviation between receivers, dB, of some sources together: the measure of a search,
written out for speed, and their mean level. With one receiver: the deviation over the frequencies.

@param turns - What settings do to each of `picked`; nothing where not given.
*/
export function quickBass(
	field: BassField,
	picked: readonly number[],
	receivers: readonly number[],
	turns?: readonly Turn[],
): {readonly spreadDb: number; readonly outputDb: number} {
	const count = field.frequenciesHertz.length;
	let total = 0;
	let sumAll = 0;
	let squareAll = 0;
	for (let f = 0; f < count; f++) {
		let sum = 0;
		let square = 0;
		for (let k = 0; k < receivers.length; k++) {
			const r = receivers[k]!;
			let a = 0;
			let b = 0;
			for (let i = 0; i < picked.length; i++) {
				const index = (picked[i]! * field.receivers + r) * count + f;
				const turn = turns?.[i];
				if (turn) {
					a += turn.real[f]! * field.real[index]! - turn.imaginary[f]! * field.imaginary[index]!;
					b += turn.real[f]! * field.imaginary[index]! + turn.imaginary[f]! * field.real[index]!;
				} else {
					a += field.real[index]!;
					b += field.imaginary[index]!;
				}
			}

			const level = Math.log(a * a + b * b + 1e-12);
			sum += level;
			square += level * level;
		}

		const mean = sum / receivers.length;
		total += Math.sqrt(Math.max(0, square / receivers.length - mean * mean));
		sumAll += mean;
		squareAll += mean * mean;
	}

	// Natural logarithms of power so far.
	const perNeper = 10 / Math.LN10;
	const mean = sumAll / count;
	const nepers =
		receivers.length > 1 ? total / count : Math.sqrt(Math.max(0, squareAll / count - mean * mean));
	return {spreadDb: perNeper * nepers, outputDb: perNeper * mean};
}
