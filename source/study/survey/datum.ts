import {symmetricEigen} from '../../science/numeric/symmetricEigen.ts';
import {type Convention, offsetsOf, predict, rowWidth} from './equations.ts';
import type {Observation} from './observations.ts';

/** Displacements of the whole state, one per array. */
type Displacements = Float64Array[];

/** The six rigid motions of a part of the network, about its middle. */
export function rigidMotions(state: Float64Array, members: readonly number[]): Displacements {
	const middle = [0, 1, 2].map(
		axis => members.reduce((sum, point) => sum + state[point * 3 + axis]!, 0) / members.length,
	);
	const motions: Displacements = [];
	for (const axis of [0, 1, 2]) {
		const shift = new Float64Array(state.length);
		for (const point of members) shift[point * 3 + axis] = 1;
		motions.push(shift);
	}

	for (const [one, other] of [
		[0, 1],
		[1, 2],
		[2, 0],
	] as const) {
		const turn = new Float64Array(state.length);
		for (const point of members) {
			turn[point * 3 + one] = -(state[point * 3 + other]! - middle[other]!);
			turn[point * 3 + other] = state[point * 3 + one]! - middle[one]!;
		}

		motions.push(turn);
	}

	return motions;
}

/** Change of every reading, in its sigmas, at each displacement of the state. */
function responsesTo(
	observations: readonly Observation[],
	state: Float64Array,
	motions: Displacements,
): Displacements {
	const slopes = new Float64Array(rowWidth);
	const responses = motions.map(() => new Float64Array(observations.length));
	for (let row = 0; row < observations.length; row++) {
		const observation = observations[row]!;
		const offsets = offsetsOf(observation);
		predict(observation, state, slopes);
		for (let index = 0; index < motions.length; index++) {
			const motion = motions[index]!;
			let change = 0;
			for (let place = 0; place < offsets.length; place++)
				change += slopes[place]! * motion[offsets[place]!]!;
			responses[index]![row] = change / observation.sigmaMetres;
		}
	}

	return responses;
}

const inner = (a: Float64Array, b: Float64Array) => {
	let sum = 0;
	for (let index = 0; index < a.length; index++) sum += a[index]! * b[index]!;
	return sum;
};

/** Inner products of each with each. */
function gramOf(vectors: Displacements): number[][] {
	const gram: number[][] = vectors.map(() => []);
	for (const [row, a] of vectors.entries()) {
		for (let column = 0; column <= row; column++) {
			gram[row]![column] = inner(a, vectors[column]!);
			gram[column]![row] = gram[row]![column]!;
		}
	}

	return gram;
}

const combine = (motions: Displacements, factors: readonly number[]) =>
	motions[0]!.map((_, at) => factors.reduce((sum, factor, index) => sum + factor * motions[index]![at]!, 0));

/**
The displacements among the combinations of `motions` that no observation sees, as an orthonormal set.

@returns Possibly none.
*/
export function unseenMotions(
	observations: readonly Observation[],
	state: Float64Array,
	motions: Displacements,
): Displacements {
	const units = motions
		.map(motion => ({motion, size: Math.sqrt(inner(motion, motion))}))
		.filter(({size}) => size > 1e-9)
		.map(({motion, size}) => motion.map(value => value / size));
	if (units.length === 0) return [];
	const seen = symmetricEigen(gramOf(responsesTo(observations, state, units)));
	const limit = Math.max(seen.values.at(-1)!, 1) * 1e-10;
	const unseen = seen.vectors
		.filter((_, index) => seen.values[index]! < limit)
		.map(vector => combine(units, vector));
	if (unseen.length === 0) return [];
	// Turning two points about their own line moves nothing: such combinations have no length and are dropped.
	const gram = symmetricEigen(gramOf(unseen));
	return gram.vectors
		.map((vector, index) => ({vector, size: gram.values[index]!}))
		.filter(({size}) => size > 1e-6)
		.map(({vector, size}) =>
			combine(
				unseen,
				vector.map(value => value / Math.sqrt(size)),
			),
		);
}

/**
Of the conventions on offer, in the order of preference, those that are needed to hold what no reading ties down.

@param unseen - Orthonormal, from `unseenMotions`.
*/
export function neededConventions(unseen: Displacements, offered: readonly Convention[]): Convention[] {
	const held: number[][] = [];
	const needed: Convention[] = [];
	for (const convention of offered) {
		if (held.length === unseen.length) break;
		let grip = unseen.map(motion =>
			convention.offsets.reduce(
				(sum, offset, place) => sum + convention.factors[place]! * motion[offset]!,
				0,
			),
		);
		for (const other of held) {
			const along = grip.reduce((sum, value, index) => sum + value * other[index]!, 0);
			grip = grip.map((value, index) => value - along * other[index]!);
		}

		const size = Math.hypot(...grip);
		if (size < 1e-3) continue;
		held.push(grip.map(value => value / size));
		needed.push(convention);
	}

	return needed;
}
