import {distance, type Vector} from '../survey/vectors.ts';
import {responseInto, scratchFor} from './bassWeights.ts';
import type {RoomDraw} from './draws.ts';
import type {Turn} from './subSetting.ts';

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

/** Receivers in one draw, kept while sources come and go. */
export type Ears = {
	/** Shapes of the modes at each. */
	readonly shapes: readonly Float64Array[];
	/** The reference ear; sources are advanced by their ways to it. */
	readonly align: Vector;
	readonly speedOfSound: number;
};

/** Receivers in one draw, the reference ear first. */
export const earsIn = (
	{at}: Pick<RoomDraw, 'at'>,
	receivers: readonly Numbered[],
	speedOfSound: number,
): Ears => ({
	shapes: receivers.map(one => at(one.at, one.number)),
	align: receivers[0]!.at,
	speedOfSound,
});

/** Responses from some sources to receivers in one draw. */
export function fieldAt(
	{at, weights}: RoomDraw,
	sources: readonly Numbered[],
	{shapes: ears, align, speedOfSound}: Ears,
): BassField {
	const {frequenciesHertz} = weights;
	const count = frequenciesHertz.length;
	const receivers = ears.length;
	const real = new Float64Array(sources.length * receivers * count);
	const imaginary = new Float64Array(real.length);
	const scratch = scratchFor(ears[0]!.length);
	for (let s = 0; s < sources.length; s++) {
		const source = sources[s]!;
		const shapes = at(source.at, source.number);
		const turn = advanceOf(frequenciesHertz, distance(source.at, align) / speedOfSound);
		for (let r = 0; r < receivers; r++) {
			const from = (s * receivers + r) * count;
			responseInto(weights, [shapes, ears[r]!], scratch, [real, imaginary], from);
			for (let f = 0, k = from; f < count; f++, k++) {
				const a = real[k]!;
				const b = imaginary[k]!;
				real[k] = turn.real[f]! * a - turn.imaginary[f]! * b;
				imaginary[k] = turn.real[f]! * b + turn.imaginary[f]! * a;
			}
		}
	}

	return {sources: sources.length, receivers, frequenciesHertz, real, imaginary};
}

/** Factors that advance a source by some seconds. */
function advanceOf(frequenciesHertz: readonly number[], seconds: number): Turn {
	const real = new Float64Array(frequenciesHertz.length);
	const imaginary = new Float64Array(frequenciesHertz.length);
	for (let f = 0; f < real.length; f++) {
		const phase = 2 * Math.PI * frequenciesHertz[f]! * seconds;
		real[f] = Math.cos(phase);
		imaginary[f] = Math.sin(phase);
	}

	return {real, imaginary};
}

/** Every response of one draw. */
export const fieldOf = (
	draw: RoomDraw,
	sources: readonly Numbered[],
	receivers: readonly Numbered[],
	speedOfSound: number,
): BassField => fieldAt(draw, sources, earsIn(draw, receivers, speedOfSound));

/** Some sources of a field, by their places in it, as a field of their own. */
export function pickedOf(field: BassField, picked: readonly number[]): BassField {
	const size = field.receivers * field.frequenciesHertz.length;
	const real = new Float64Array(size * picked.length);
	const imaginary = new Float64Array(size * picked.length);
	for (const [i, source] of picked.entries()) {
		real.set(field.real.subarray(source * size, (source + 1) * size), i * size);
		imaginary.set(field.imaginary.subarray(source * size, (source + 1) * size), i * size);
	}

	return {...field, sources: picked.length, real, imaginary};
}

/** Fields of single sources at the same receivers as one. */
export function joinedFields(parts: readonly BassField[]): BassField {
	const [first] = parts;
	const size = first!.real.length;
	const real = new Float64Array(size * parts.length);
	const imaginary = new Float64Array(size * parts.length);
	for (const [i, part] of parts.entries()) {
		real.set(part.real, i * size);
		imaginary.set(part.imaginary, i * size);
	}

	return {...first!, sources: parts.length, real, imaginary};
}

/** Complex sums at every receiver and frequency of a field: receiver · frequencies + frequency. */
export type Sums = {readonly real: Float64Array; readonly imaginary: Float64Array};

export const emptySums = ({receivers, frequenciesHertz}: BassField): Sums => ({
	real: new Float64Array(receivers * frequenciesHertz.length),
	imaginary: new Float64Array(receivers * frequenciesHertz.length),
});

/** Adds one source to sums, with what its setting does to it where it does anything. */
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

/** Levels at every receiver of all sources together, dB; one list a receiver. */
export function togetherDb(field: BassField, turns: ReadonlyArray<Turn | undefined>): number[][] {
	const sums = emptySums(field);
	for (let source = 0; source < field.sources; source++) addSource(sums, field, source, turns[source]);
	const count = field.frequenciesHertz.length;
	return Array.from({length: field.receivers}, (_, r) => {
		const levels = new Array<number>(count);
		for (let f = 0, k = r * count; f < count; f++, k++)
			levels[f] = 10 * Math.log10(Math.max(1e-12, sums.real[k]! ** 2 + sums.imaginary[k]! ** 2));
		return levels;
	});
}
