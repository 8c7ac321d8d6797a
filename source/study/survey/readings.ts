import type {TapeReading} from '../../profile/types.ts';
import type {Fit} from './fit.ts';
import {isUsable, type Observation, type Unusable} from './observations.ts';
import {detectableMetresOf, leastRedundancy, type ReadingTest} from './reliability.ts';
import type {AdjustedReading, Suspect} from './result.ts';

/** Every reading of a profile with what the network makes of it, in the profile's order. */
export function adjustedReadings(
	tape: readonly TapeReading[],
	made: ReadonlyArray<Observation | Unusable | undefined>,
	fit: Fit,
	suspects: readonly Suspect[],
): AdjustedReading[] {
	const testOf = new Map<number, ReadingTest>();
	for (const [row, {members}] of fit.joined.entries()) {
		for (const [place, {reading}] of members.entries()) testOf.set(reading, fit.tests[row]![place]!);
	}

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

		const {residualMetres, redundancy: share, standardised} = testOf.get(index)!;
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
			standardisedResidual: Math.abs(standardised),
			detectableMetres: detectableMetresOf(sigmaMetres, share, fit.critical),
		});
	});
}
