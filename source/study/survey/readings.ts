import type {TapeReading} from '../../profile/types.ts';
import {isUsable, type Observation, type Unusable} from './observations.ts';
import {leastRedundancy, noncentrality} from './reliability.ts';
import type {AdjustedReading, Suspect} from './result.ts';
import type {Snooped} from './snooping.ts';

/** Every reading of a profile with what the network makes of it, in the profile's order. */
export function adjustedReadings(
	tape: readonly TapeReading[],
	made: ReadonlyArray<Observation | Unusable | undefined>,
	{settled, used, redundancy, standardised}: Snooped,
	suspects: readonly Suspect[],
): AdjustedReading[] {
	const {residuals} = settled.solved.rows;
	const rowOf = new Map(used.map((observation, row) => [observation.reading, row]));
	const suspectOf = new Map(suspects.map(suspect => [suspect.index, suspect]));
	return tape.map(({from, to, metres}, index): AdjustedReading => {
		const one = made[index];
		if (!one) return {index, from, to, metres, sigmaMetres: 0, status: 'setAside'};
		if (!isUsable(one)) return {index, from, to, metres, sigmaMetres: 0, status: 'unusable'};
		const {sigmaMetres} = one;
		const suspect = suspectOf.get(index);
		if (suspect) {
			return {
				index,
				from,
				to,
				metres,
				sigmaMetres,
				status: 'suspect',
				adjustedMetres: suspect.expectedMetres,
				residualMetres: -suspect.errorMetres,
				redundancy: 1,
				standardisedResidual: suspect.standardisedResidual,
			};
		}

		const row = rowOf.get(index)!;
		const residualMetres = residuals[row]! * sigmaMetres;
		const share = redundancy[row]!;
		const adjustedMetres = metres + residualMetres;
		const known = {
			index,
			from,
			to,
			metres,
			sigmaMetres,
			status: 'used' as const,
			adjustedMetres,
			residualMetres,
			redundancy: share,
		};
		if (share < leastRedundancy) return known;
		return Object.assign(known, {
			standardisedResidual: Math.abs(standardised[row]!),
			detectableMetres: (noncentrality * sigmaMetres) / Math.sqrt(share),
		});
	});
}
