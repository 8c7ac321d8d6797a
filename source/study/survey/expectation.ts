import {offsetsOf, predict, rowWidth} from './equations.ts';
import type {Observation} from './observations.ts';

/** Covariance of the whole state, m², shape size × size. */
export type StateCovariance = {readonly size: number; readonly values: Float64Array};

export type Expectation = {
	readonly metres: number;
	readonly sigmaMetres: number;
	/** Covariance of every place of the state with the expected reading, m². */
	readonly reach: Float64Array;
};

/** What the network expects a reading to be that it does not (or need not) contain. */
export function expectationOf(
	observation: Observation,
	state: Float64Array,
	{size, values}: StateCovariance,
): Expectation {
	const slopes = new Float64Array(rowWidth);
	const metres = predict(observation, state, slopes);
	const offsets = offsetsOf(observation);
	const reach = new Float64Array(size);
	for (const [place, offset] of offsets.entries()) {
		for (let at = 0; at < size; at++) reach[at]! += slopes[place]! * values[offset * size + at]!;
	}

	const variance = offsets.reduce((sum, offset, place) => sum + slopes[place]! * reach[offset]!, 0);
	return {metres, sigmaMetres: Math.sqrt(Math.max(0, variance)), reach};
}

/**
Covariance after one more reading.

@see Kalman, Trans. ASME J. Basic Eng. 82 (1960) 35: the update of the covariance by one observation.
*/
export function withReading(
	observation: Observation,
	{size, values}: StateCovariance,
	expected: Expectation,
): StateCovariance {
	const total = expected.sigmaMetres ** 2 + observation.sigmaMetres ** 2;
	const next = Float64Array.from(values);
	for (let a = 0; a < size; a++) {
		const factor = expected.reach[a]! / total;
		if (factor === 0) continue;
		for (let b = 0; b < size; b++) next[a * size + b]! -= factor * expected.reach[b]!;
	}

	return {size, values: next};
}

/** Standard uncertainty of one place of the state after one more reading, without making the whole covariance, metres. */
export function sigmaWithReading(
	observation: Observation,
	{size, values}: StateCovariance,
	expected: Expectation,
	offset: number,
): number {
	const total = expected.sigmaMetres ** 2 + observation.sigmaMetres ** 2;
	return Math.sqrt(Math.max(0, values[offset * size + offset]! - expected.reach[offset]! ** 2 / total));
}
