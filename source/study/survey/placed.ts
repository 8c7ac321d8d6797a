import {placedSigmaMetres} from '../../profile/practice.ts';
import {symmetricEigen} from '../../science/numeric/symmetricEigen.ts';
import {unknownSigmaMetres} from './equations.ts';
import type {StateCovariance} from './expectation.ts';
import type {SurveyNetwork} from './network.ts';
import type {PointStatus} from './result.ts';
import type {SolvedNetwork} from './solveNetwork.ts';

export function statusOf(worstSigmaMetres: number, isMeasured: boolean, isAssumed = false): PointStatus {
	if (!isMeasured) return 'unmeasured';
	if (isAssumed) return 'undetermined';
	if (worstSigmaMetres <= placedSigmaMetres.determined) return 'determined';
	return worstSigmaMetres <= placedSigmaMetres.weak ? 'weak' : 'undetermined';
}

/** Covariance of the whole state, m²: exact dimensions 0, what no reading touches as good as unknown. */
export function stateCovariance(
	{points, exactDimensions}: SurveyNetwork,
	{state, columnOf, rows}: SolvedNetwork,
) {
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
export function looseness({points}: SurveyNetwork, {columnOf, rows}: SolvedNetwork): number[] {
	return points.map((_, index) => {
		const columns = [0, 1, 2].map(axis => columnOf[index * 3 + axis]!);
		if (columns.some(column => column < 0)) return unknownSigmaMetres;
		const block = columns.map(a => columns.map(b => rows.covariance[a * rows.unknowns + b]!));
		return Math.sqrt(Math.max(0, symmetricEigen(block).values[2]!));
	});
}

/** Worst standard uncertainty of a point in any direction, metres. */
export function worstSigma({size, values}: StateCovariance, point: number): number {
	const block = [0, 1, 2].map(a => [0, 1, 2].map(b => values[(point * 3 + a) * size + point * 3 + b]!));
	return Math.sqrt(Math.max(0, symmetricEigen(block).values[2]!));
}
