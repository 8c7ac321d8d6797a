import type {RoomModes} from './modes.ts';

/** Complex transfer functions, real and imaginary part by frequency. */
export type Response = {readonly real: Float64Array; readonly imaginary: Float64Array};

/**
What every mode contributes at every frequency, before its shape at source and receiver: 1/(kₙ² − k²) with
k = (ω − jδ)/c, δ = 3·ln 10 / T. Shape frequencies × modes.
*/
export type ModalWeights = {
	readonly frequenciesHertz: readonly number[];
	readonly real: Float64Array;
	readonly imaginary: Float64Array;
};

/** A change of one mode against the computed one: its frequency and its damping, each as a factor. */
export type ModeChange = {readonly frequency: number; readonly damping: number};

/**
Weights of the damped modal sum.

@param decaySeconds - Reverberation time T of all modes.
@param changeOf - How a mode of the real room differs from the computed one; not at all where not given.
@see Kuttruff, Room Acoustics, 5th ed., eq. 3.10 and 3.44 (δ = 3·ln 10 / T = 6.91/T).
*/
export function modalWeights(
	{modes}: Pick<RoomModes, 'modes'>,
	frequenciesHertz: readonly number[],
	decaySeconds: number,
	speedOfSound: number,
	changeOf?: (mode: number) => ModeChange,
): ModalWeights {
	const real = new Float64Array(frequenciesHertz.length * modes.length);
	const imaginary = new Float64Array(real.length);
	const changes = changeOf && modes.map((_, n) => changeOf(n));
	for (const [f, frequency] of frequenciesHertz.entries()) {
		const omega = 2 * Math.PI * frequency;
		for (const [n, mode] of modes.entries()) {
			const change = changes?.[n];
			const own = 2 * Math.PI * mode.frequencyHertz * (change?.frequency ?? 1);
			const delta = ((3 * Math.LN10) / decaySeconds) * (change?.damping ?? 1);
			// kₙ² − (ω − jδ)²/c² = (ωₙ² − ω² + δ² + 2jωδ)/c²
			const a = (own ** 2 - omega ** 2 + delta ** 2) / speedOfSound ** 2;
			const b = (2 * omega * delta) / speedOfSound ** 2;
			const size = a * a + b * b;
			real[f * modes.length + n] = a / size;
			imaginary[f * modes.length + n] = -b / size;
		}
	}

	return {frequenciesHertz, real, imaginary};
}

/** Free-field pressure at 1 m of the source that the modal sum is driven by: 1/(4π), so that 0 dB is that source's own. */
const atOneMetre = 1 / (4 * Math.PI);

/**
Pressure at a receiver per free-field pressure at 1 m, for a source of constant volume acceleration (a sub above its
limit), by frequency. The mode at 0 Hz is part of the sum.

@param source - Shapes of all modes at the source (`RoomModes.at`).
@param receiver - The same at the receiver.
*/
export function modalResponse(weights: ModalWeights, source: Float64Array, receiver: Float64Array): Response {
	const count = weights.frequenciesHertz.length;
	const real = new Float64Array(count);
	const imaginary = new Float64Array(count);
	const product = source.map((value, n) => (value * receiver[n]!) / atOneMetre);
	for (let f = 0; f < count; f++) {
		const base = f * product.length;
		let sumReal = 0;
		let sumImaginary = 0;
		for (let n = 0; n < product.length; n++) {
			sumReal += product[n]! * weights.real[base + n]!;
			sumImaginary += product[n]! * weights.imaginary[base + n]!;
		}

		real[f] = sumReal;
		imaginary[f] = sumImaginary;
	}

	return {real, imaginary};
}
