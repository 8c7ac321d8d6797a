import type {ModeChange} from '../room/modalResponse.ts';
import {modalWeights} from '../room/modalResponse.ts';
import type {RoomModes} from '../room/modes.ts';

/**
Modes this much above the highest frequency wanted act there as a stiffness that changes smoothly: their sum is taken at a
few frequencies and interpolated. With five nodes in the square of the frequency the error is some 1e-4 of their sum
(Chebyshev's bound, ρ⁻⁵ with ρ = 5.5 at this distance of the nearest pole).
*/
const smoothFrom = 1.4;
const nodeCount = 5;

/**
What every mode contributes in one draw before its shapes at source and receiver: for low modes at every frequency
(frequencies × modes), for those far above at a few nodes (nodes × modes) from which every frequency follows.
*/
export type BassWeights = {
	readonly frequenciesHertz: readonly number[];
	/** The first so many modes are low. */
	readonly lowModes: number;
	readonly lowReal: Float64Array;
	readonly lowImaginary: Float64Array;
	readonly highReal: Float64Array;
	readonly highImaginary: Float64Array;
	/** Frequencies × nodes: value at a frequency from those at the nodes; empty where no mode is that high. */
	readonly interpolation: Float64Array;
	readonly nodes: number;
};

/** Roots of Chebyshev's polynomial in the square of the frequency, which is what high modes depend on. */
function nodesBetween(fromHertz: number, toHertz: number): number[] {
	const [low, high] = [fromHertz ** 2, toHertz ** 2];
	return Array.from({length: nodeCount}, (_, i) =>
		Math.sqrt((low + high) / 2 + ((high - low) / 2) * Math.cos((Math.PI * (i + 0.5)) / nodeCount)),
	);
}

/** Lagrange's polynomials of some nodes at every frequency, in the square of the frequency. */
function interpolationAt(frequenciesHertz: readonly number[], nodes: readonly number[]): Float64Array {
	const rows = frequenciesHertz.flatMap(hertz =>
		nodes.map((node, i) =>
			nodes.reduce(
				(product, other, j) =>
					i === j ? product : (product * (hertz ** 2 - other ** 2)) / (node ** 2 - other ** 2),
				1,
			),
		),
	);
	return Float64Array.from(rows);
}

/**
Weights of a draw.

@param modes - Rising in frequency.
@param frequenciesHertz - Rising.
@param decaySeconds - Reverberation time of all modes.
@param changeOf - How a mode of this draw differs from the computed one.
*/
export function bassWeights(
	{modes}: Pick<RoomModes, 'modes'>,
	frequenciesHertz: readonly number[],
	decaySeconds: number,
	speedOfSound: number,
	changeOf: (mode: number) => ModeChange,
): BassWeights {
	const [first, last] = [frequenciesHertz[0]!, frequenciesHertz.at(-1)!];
	const above = modes.findIndex(({frequencyHertz}) => frequencyHertz > smoothFrom * last);
	// Where there is one frequency or few high modes, nothing is saved.
	const lowModes = above < 0 || frequenciesHertz.length <= nodeCount ? modes.length : above;
	const low = modalWeights(
		{modes: modes.slice(0, lowModes)},
		frequenciesHertz,
		decaySeconds,
		speedOfSound,
		changeOf,
	);
	const nodes = lowModes === modes.length ? [] : nodesBetween(first, last);
	const high = modalWeights({modes: modes.slice(lowModes)}, nodes, decaySeconds, speedOfSound, n =>
		changeOf(lowModes + n),
	);
	return {
		frequenciesHertz,
		lowModes,
		lowReal: low.real,
		lowImaginary: low.imaginary,
		highReal: high.real,
		highImaginary: high.imaginary,
		interpolation: interpolationAt(frequenciesHertz, nodes),
		nodes: nodes.length,
	};
}

/** 0 dB: one source's free field at 1 m. */
const toFreeField = 4 * Math.PI;

/** Lists that sums of one draw need while they are made. */
export type Scratch = {readonly product: Float64Array; readonly sums: Float64Array};

export const scratchFor = (modes: number): Scratch => ({
	product: new Float64Array(modes),
	sums: new Float64Array(2 * nodeCount),
});

/**
The response from one source to one receiver, written into lists from an index on, by frequency.

@param source - Shapes of the modes at the source.
@param receiver - The same at the receiver.
*/
export function responseInto(
	weights: BassWeights,
	[source, receiver]: readonly [Float64Array, Float64Array],
	{product, sums}: Scratch,
	[real, imaginary]: readonly [Float64Array, Float64Array],
	from: number,
): void {
	const {lowModes, lowReal, lowImaginary, highReal, highImaginary, nodes, interpolation} = weights;
	for (let n = 0; n < product.length; n++) product[n] = toFreeField * source[n]! * receiver[n]!;
	const high = product.length - lowModes;
	for (let node = 0; node < nodes; node++) {
		sums[2 * node] = productSum(product, lowModes, highReal, node * high, high);
		sums[2 * node + 1] = productSum(product, lowModes, highImaginary, node * high, high);
	}

	const count = weights.frequenciesHertz.length;
	for (let f = 0; f < count; f++) {
		let one = productSum(product, 0, lowReal, f * lowModes, lowModes);
		let other = productSum(product, 0, lowImaginary, f * lowModes, lowModes);
		for (let node = 0; node < nodes; node++) {
			const share = interpolation[f * nodes + node]!;
			one += share * sums[2 * node]!;
			other += share * sums[2 * node + 1]!;
		}

		real[from + f] = one;
		imaginary[from + f] = other;
	}
}

/** Sum of products along two stretches, four sums side by side so that none waits for the one before. */
function productSum(a: Float64Array, fromA: number, b: Float64Array, fromB: number, count: number): number {
	let one = 0;
	let two = 0;
	let three = 0;
	let four = 0;
	const whole = count - (count % 4);
	for (let n = 0; n < whole; n += 4) {
		one += a[fromA + n]! * b[fromB + n]!;
		two += a[fromA + n + 1]! * b[fromB + n + 1]!;
		three += a[fromA + n + 2]! * b[fromB + n + 2]!;
		four += a[fromA + n + 3]! * b[fromB + n + 3]!;
	}

	for (let n = whole; n < count; n++) one += a[fromA + n]! * b[fromB + n]!;
	return one + two + (three + four);
}
