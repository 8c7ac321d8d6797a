import {placedSigmaMetres} from '../../profile/practice.ts';
import {symmetricEigen} from '../../science/numeric/symmetricEigen.ts';
import {unknownSigmaMetres} from './equations.ts';
import type {Ellipse, PlacedPoint, PointStatus} from './result.ts';
import type {Network, SolvedNetwork} from './solveNetwork.ts';

export function statusOf(worstSigmaMetres: number, isMeasured: boolean): PointStatus {
	if (!isMeasured) return 'unmeasured';
	if (worstSigmaMetres <= placedSigmaMetres.determined) return 'determined';
	return worstSigmaMetres <= placedSigmaMetres.weak ? 'weak' : 'undetermined';
}

/** Covariance of the whole state, m²: exact dimensions 0, what no reading touches as good as unknown. */
export function stateCovariance({points, exactDimensions}: Network, {state, columnOf, rows}: SolvedNetwork) {
	const size = state.length;
	const values = new Float64Array(size * size);
	for (let a = 0; a < size; a++) {
		const row = columnOf[a]!;
		if (row < 0) {
			values[a * size + a] = a >= points.length * 3 && exactDimensions.has(a) ? 0 : unknownSigmaMetres ** 2;
			continue;
		}

		for (let b = 0; b < size; b++) {
			const column = columnOf[b]!;
			if (column >= 0) values[a * size + b] = rows.covariance[row * rows.unknowns + column]!;
		}
	}

	return {size, values};
}

/** Worst standard uncertainty of each point in any direction, metres. */
export function looseness({points}: Network, {columnOf, rows}: SolvedNetwork): number[] {
	return points.map((_, index) => {
		const columns = [0, 1, 2].map(axis => columnOf[index * 3 + axis]!);
		if (columns.some(column => column < 0)) return unknownSigmaMetres;
		const block = columns.map(a => columns.map(b => rows.covariance[a * rows.unknowns + b]!));
		return Math.sqrt(Math.max(0, symmetricEigen(block).values[2]!));
	});
}

/**
Standard error ellipse of two coordinates.

@see Ghilani and Wolf, Adjustment Computations, chapter 19.
*/
export function ellipseOf(varianceX: number, varianceY: number, covariance: number): Ellipse {
	const middle = (varianceX + varianceY) / 2;
	const radius = Math.hypot((varianceX - varianceY) / 2, covariance);
	return {
		semiMajorMetres: Math.sqrt(Math.max(0, middle + radius)),
		semiMinorMetres: Math.sqrt(Math.max(0, middle - radius)),
		angleDegrees: (Math.atan2(2 * covariance, varianceX - varianceY) / 2) * (180 / Math.PI),
	};
}

/** The points with places, uncertainties and status. */
export function placedPoints(
	network: Network,
	solved: SolvedNetwork,
	covariance: {readonly size: number; readonly values: Float64Array},
	loose: readonly number[],
): PlacedPoint[] {
	const {size, values} = covariance;
	return network.points.map((point, index) => {
		const offset = index * 3;
		const variance = (a: number, b: number) => values[(offset + a) * size + offset + b]!;
		return {
			...point,
			at: [solved.state[offset]!, solved.state[offset + 1]!, solved.state[offset + 2]!],
			sigmaMetres: [Math.sqrt(variance(0, 0)), Math.sqrt(variance(1, 1)), Math.sqrt(variance(2, 2))],
			worstSigmaMetres: loose[index]!,
			ellipse: ellipseOf(variance(0, 0), variance(1, 1), variance(0, 1)),
			status: statusOf(loose[index]!, solved.components[index]! >= 0),
		};
	});
}
