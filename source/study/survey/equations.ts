import type {SparseProblem} from '../../science/numeric/sparseLeastSquares.ts';
import {toBrokenCeiling} from './brokenCeiling.ts';
import type {ConventionFact} from './facts.ts';
import type {Observation} from './observations.ts';

/**
A convention that places a network which no reading ties to the walls: a linear function of the state that is held at
a value. With as many as the network has freedoms they strain nothing.
*/
export type Convention = {
	readonly offsets: readonly number[];
	readonly factors: readonly number[];
	readonly value: number;
	readonly fact: ConventionFact;
};

/** How tightly a convention is held, metres: far below a tape's division, far above rounding. */
const conventionSigmaMetres = 1e-4;
/** Standard deviation of a coordinate of which nothing is known, metres. Any home room is small against it. */
export const unknownSigmaMetres = 100;
/** No room is narrower, metres. */
const narrowestMetres = 0.1;
/** Places in a row: two points of three coordinates, or three coordinates and a room dimension. */
export const rowWidth = 6;

/** Offsets into the state that an observation depends on, in the order of its derivatives. */
export function offsetsOf(observation: Observation): number[] {
	switch (observation.kind) {
		case 'points': {
			const {from, to} = observation;
			return [from, from + 1, from + 2, to, to + 1, to + 2];
		}

		case 'plane': {
			const {point, axis, dimension} = observation;
			return dimension === undefined ? [point + axis] : [point + axis, dimension];
		}

		case 'slope':
			return [observation.point + observation.axis, observation.point + 2, observation.dimension];
		case 'broken':
			return [observation.point + observation.axis, observation.point + 2];
		default:
			return [observation.dimension];
	}
}

/**
The distance that an observation would read in a state, and its derivatives by the offsets of `offsetsOf`.

@param out - Shape (≥ 6): the derivatives, dimensionless.
@returns Metres.
*/
export function predict(observation: Observation, state: Float64Array, out: Float64Array): number {
	switch (observation.kind) {
		case 'points': {
			const {from, to} = observation;
			const x = state[to]! - state[from]!;
			const y = state[to + 1]! - state[from + 1]!;
			const z = state[to + 2]! - state[from + 2]!;
			// Two things in one place have no direction between them: let the next step part them along x.
			const metres = Math.sqrt(x * x + y * y + z * z);
			const inverse = metres > 1e-9 ? 1 / metres : 0;
			out[3] = metres > 1e-9 ? x * inverse : 1;
			out[4] = y * inverse;
			out[5] = z * inverse;
			out[0] = -out[3];
			out[1] = -out[4];
			out[2] = -out[5];
			return metres;
		}

		case 'plane': {
			const {point, axis, dimension} = observation;
			if (dimension === undefined) {
				out[0] = 1;
				return state[point + axis]!;
			}

			out[0] = -1;
			out[1] = 1;
			return state[dimension]! - state[point + axis]!;
		}

		case 'slope': {
			const {point, axis, dimension, heightsMetres} = observation;
			const rise = heightsMetres[1] - heightsMetres[0];
			// A span that readings have made nothing of is kept from dividing by it; no room is as narrow.
			const across = Math.max(state[dimension]!, narrowestMetres);
			const along = state[point + axis]!;
			// Shortest way to the plane h(u) = h₁ + rise·u/S: the vertical gap times S/√(S² + rise²).
			const slant = Math.hypot(across, rise);
			const cosine = across / slant;
			const gap = heightsMetres[0] + (rise * along) / across - state[point + 2]!;
			out[0] = (rise / across) * cosine;
			out[1] = -cosine;
			out[2] = (-rise * along * cosine) / across ** 2 + (gap * rise ** 2) / slant ** 3;
			return gap * cosine;
		}

		case 'broken': {
			const {point, axis, places} = observation;
			return toBrokenCeiling(places, state[point + axis]!, state[point + 2]!, out);
		}

		default:
			out[0] = 1;
			return state[observation.dimension]!;
	}
}

/**
The observations and conventions as a sparse least-squares problem over the free places of the state.

@param state - The whole state; places that are not free keep their values.
@param free - Offsets of the unknowns, in the order of the solver's parameters.
*/
export function problemOf(
	observations: readonly Observation[],
	conventions: readonly Convention[],
	state: Float64Array,
	free: readonly number[],
): SparseProblem {
	const columnOf = new Int32Array(state.length).fill(-1);
	for (const [column, offset] of free.entries()) columnOf[offset] = column;
	const offsets = [...observations.map(offsetsOf), ...conventions.map(convention => convention.offsets)];
	const columns = new Int32Array(offsets.length * rowWidth).fill(-1);
	for (const [row, places] of offsets.entries()) {
		for (const [place, offset] of places.entries()) columns[row * rowWidth + place] = columnOf[offset]!;
	}

	const current = Float64Array.from(state);
	const slopes = new Float64Array(rowWidth);
	return {
		unknowns: free.length,
		width: rowWidth,
		columns,
		rest: 1 / unknownSigmaMetres ** 2,
		evaluate(x, residuals, derivatives) {
			for (let column = 0; column < free.length; column++) current[free[column]!] = x[column]!;
			for (let row = 0; row < observations.length; row++) {
				const observation = observations[row]!;
				const weight = 1 / observation.sigmaMetres;
				residuals[row] = (predict(observation, current, slopes) - observation.metres) * weight;
				const base = row * rowWidth;
				for (let place = 0; place < rowWidth; place++) derivatives[base + place] = slopes[place]! * weight;
			}

			for (let index = 0; index < conventions.length; index++) {
				const {offsets: places, factors, value} = conventions[index]!;
				const row = observations.length + index;
				let sum = -value;
				for (let place = 0; place < places.length; place++) {
					sum += factors[place]! * current[places[place]!]!;
					derivatives[row * rowWidth + place] = factors[place]! / conventionSigmaMetres;
				}

				residuals[row] = sum / conventionSigmaMetres;
			}
		},
	};
}
