import {expectationOf} from './expectation.ts';
import type {Observation} from './observations.ts';
import {stateCovariance} from './placed.ts';
import {
	criticalValue,
	leastRedundancy,
	redundancyNumbers,
	standardisedResiduals,
	testCorrelation,
} from './reliability.ts';
import {type Settled, settle} from './settle.ts';
import type {Network, SolvedNetwork} from './solveNetwork.ts';

/** Readings whose tests correlate more than this cannot be told apart. */
const inseparable = 0.9;

export type Removed = {
	readonly observation: Observation;
	readonly standardisedResidual: number;
	/** Readings (places in the profile's list) that could be the wrong one instead. */
	readonly alternatives: readonly number[];
};

export type Snooped = {
	readonly settled: Settled;
	readonly used: readonly Observation[];
	readonly removed: readonly Removed[];
	readonly redundancy: Float64Array;
	readonly standardised: Float64Array;
	/** Whether more readings disagree than were taken out. */
	readonly isCutShort: boolean;
};

/**
How well a usual slip explains a reading: 0 not at all, 1 fully. Decides between readings that the test cannot tell apart.

@param settled - The network without the reading, where it is at hand.
*/
export type Plausibility = (
	observation: Observation,
	expectedMetres: number,
	sigmaMetres: number,
	settled?: Settled,
) => number;

function worstOf(
	observations: readonly Observation[],
	solved: SolvedNetwork,
	redundancy: Float64Array,
	standardised: Float64Array,
	plausibility: Plausibility,
): {row: number; group: number[]} | undefined {
	let worst = -1;
	for (const [row, w] of standardised.entries()) {
		if (Math.abs(w) > criticalValue && (worst < 0 || Math.abs(w) > Math.abs(standardised[worst]!)))
			worst = row;
	}

	if (worst < 0) return undefined;
	const group = observations
		.map((_, row) => row)
		.filter(
			row =>
				row !== worst &&
				redundancy[row]! >= leastRedundancy &&
				Math.abs(standardised[row]!) > criticalValue &&
				Math.abs(testCorrelation(solved.rows, redundancy, worst, row)) > inseparable,
		);
	// The blunder that each reading would hold, were it the wrong one, is −v/r.
	const explained = [worst, ...group].map(row => {
		const {metres, sigmaMetres} = observations[row]!;
		const error = (-solved.rows.residuals[row]! * sigmaMetres) / redundancy[row]!;
		const sigma = sigmaMetres / Math.sqrt(redundancy[row]!);
		const closeness = Math.abs(standardised[row]! / standardised[worst]!);
		return {row, score: closeness + 0.2 * plausibility(observations[row]!, metres - error, sigma)};
	});
	const first = explained.reduce((best, next) => (next.score > best.score + 1e-9 ? next : best));
	return {row: first.row, group: explained.map(({row}) => row).filter(row => row !== first.row)};
}

/**
More wrong readings than this, or than a third of all: the readings are not of one room, and taking out more proves
nothing.
*/
const mostRemoved = 8;
/** Lower by more than this, half a sum of squares, is a better solution and not the same one again. */
const betterCost = 1;

/** A blunder as large may have pulled a point over to another side, metres. */
export const jumpMetres = 0.2;

/** Adjusts from where the last adjustment ended and, if that fits badly, from a fresh start; keeps the better. */
function settleBoth(
	network: Network,
	used: readonly Observation[],
	starts: readonly Float64Array[],
): Settled {
	let best = settle(network, used, starts[0]!);
	for (const start of starts.slice(1)) {
		// What fits all its readings cannot be bettered.
		if (best.solved.cost <= used.length) break;
		const next = settle(network, used, start);
		if (next.solved.cost < best.solved.cost - betterCost) best = next;
	}

	return best;
}

/** Readings within this many sigmas of what the network without them expects are put back. */
const soundSigmas = 2;

function soundOnes(network: Network, removed: readonly Removed[], {solved}: Settled): Removed[] {
	const covariance = stateCovariance(network, solved);
	return removed.filter(({observation}) => {
		const {metres, sigmaMetres} = expectationOf(observation, solved.state, covariance);
		return (
			Math.abs(observation.metres - metres) < soundSigmas * Math.hypot(observation.sigmaMetres, sigmaMetres)
		);
	});
}

/**
Data snooping: adjusts, takes out the reading with the largest standardised residual if it is above 3.29, adjusts
again, until none is. A reading that was taken out first and fits once another is gone is put back.

@param startFor - Makes a start from the readings still in use, so that a wrong one does not spoil it.
@see Baarda, A testing procedure for use in geodetic networks, Netherlands Geodetic Commission 2 (5), 1968.
*/
export function snoop(
	network: Network,
	observations: readonly Observation[],
	startFor: (used: readonly Observation[]) => Float64Array,
	plausibility: Plausibility,
): Snooped {
	let used = observations;
	let removed: Removed[] = [];
	let settled = settle(network, used, startFor(used));
	let isReviewed = false;
	const limit = Math.min(mostRemoved, Math.max(1, Math.floor(observations.length / 3)));
	for (;;) {
		const {solved} = settled;
		const redundancy = redundancyNumbers(solved.rows, used.length);
		const standardised = standardisedResiduals(solved.rows, redundancy);
		const found = worstOf(used, solved, redundancy, standardised, plausibility);
		const worst = removed.length >= limit ? undefined : found;
		if (worst) {
			const observation = used[worst.row]!;
			removed = [
				...removed,
				{
					observation,
					standardisedResidual: Math.abs(standardised[worst.row]!),
					alternatives: worst.group.map(row => used[row]!.reading),
				},
			];
			used = used.filter(one => one !== observation);
			const error = (solved.rows.residuals[worst.row]! * observation.sigmaMetres) / redundancy[worst.row]!;
			// A small blunder leaves every point on its side; after a large one a fresh start may be the better one.
			const starts = Math.abs(error) > jumpMetres ? [solved.state, startFor(used)] : [solved.state];
			settled = settleBoth(network, used, starts);
			continue;
		}

		const sound = isReviewed ? [] : soundOnes(network, removed, settled);
		if (sound.length === 0) {
			return {settled, used, removed, redundancy, standardised, isCutShort: found !== undefined};
		}

		isReviewed = true;
		removed = removed.filter(one => !sound.includes(one));
		const out = removed.map(({observation}) => observation);
		used = observations.filter(one => !out.includes(one));
		settled = settle(network, used, solved.state);
	}
}
