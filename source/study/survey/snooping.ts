import {expectationOf} from './expectation.ts';
import {type Fit, fitFrom, inseparableFrom, type Tested} from './fit.ts';
import type {SurveyNetwork} from './network.ts';
import type {Observation} from './observations.ts';
import {stateCovariance} from './placed.ts';
import {leastRedundancy} from './reliability.ts';
import {type Joined, withoutReading, withReadingBack} from './repeats.ts';
import type {Settled} from './settle.ts';

export type Removed = {
	readonly observation: Observation;
	readonly standardisedResidual: number;
	/** Readings (places in the profile's list) that could be the wrong one instead. */
	readonly alternatives: readonly number[];
};

/** Readings that are taken for wrong, and the adjustment of the others. */
export type Snooped = {
	readonly fit: Fit;
	readonly removed: readonly Removed[];
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

/** What it takes to look for wrong readings. */
export type Snooper = {
	readonly network: SurveyNetwork;
	/** Makes a start from the readings still in use, so that a wrong one does not spoil it. */
	readonly startFor: (used: readonly Joined[]) => Float64Array;
	readonly plausibility: Plausibility;
};

/** How much a usual slip adds to a test that is as large as the largest. */
const slipBonus = 0.2;

/** The reading to take out next, and those that could as well be meant. */
function worstOf(fit: Fit, plausibility: Plausibility): {worst: Tested; group: Tested[]} | undefined {
	const failing: Tested[] = [];
	let largest: Tested | undefined;
	for (const [row, tests] of fit.tests.entries()) {
		for (const [place, test] of tests.entries()) {
			if (Math.abs(test.standardised) <= fit.critical) continue;
			const one = {observation: fit.joined[row]!.members[place]!, test};
			failing.push(one);
			if (!largest || Math.abs(test.standardised) > Math.abs(largest.test.standardised)) largest = one;
		}
	}

	if (!largest) return undefined;
	const top = Math.abs(largest.test.standardised);
	// The blunder that each reading would hold, were it the wrong one, is −v/r.
	const explained = [largest, ...inseparableFrom(fit, largest, failing)].map(one => {
		const {metres, sigmaMetres} = one.observation;
		const {residualMetres, redundancy, standardised} = one.test;
		const sigma = sigmaMetres / Math.sqrt(redundancy);
		const plausible = plausibility(one.observation, metres + residualMetres / redundancy, sigma);
		return {one, score: Math.abs(standardised) / top + slipBonus * plausible};
	});
	const first = explained.reduce((best, next) => (next.score > best.score + 1e-9 ? next : best));
	return {worst: first.one, group: explained.map(({one}) => one).filter(one => one !== first.one)};
}

/** A blunder as large may have pulled a point over to another side, metres. */
const jumpMetres = 0.2;

/** Takes one reading out of a fit. */
export function fitWithout(
	{network, startFor}: Snooper,
	fit: Fit,
	{observation, test}: Tested,
	starts: ReadonlyArray<Float64Array> = [fit.settled.solved.state],
): Fit {
	const used = withoutReading(fit.joined, observation);
	const error = test.residualMetres / Math.max(test.redundancy, leastRedundancy);
	// A small blunder leaves every point on its side; after a large one a fresh start may be the better one.
	return fitFrom(network, used, [
		...starts.map(start => () => start),
		...(Math.abs(error) > jumpMetres ? [() => startFor(used)] : []),
	]);
}

/** Readings within this many sigmas of what the network without them expects are put back. */
const soundSigmas = 2;

function soundOnes(network: SurveyNetwork, removed: readonly Removed[], {solved}: Settled): Removed[] {
	if (removed.length === 0) return [];
	const covariance = stateCovariance(network, solved);
	return removed.filter(({observation}) => {
		const {metres, sigmaMetres} = expectationOf(observation, solved.state, covariance);
		return (
			Math.abs(observation.metres - metres) < soundSigmas * Math.hypot(observation.sigmaMetres, sigmaMetres)
		);
	});
}

/** A reading as taken out, with what it could be instead. */
export const removedFrom = (one: Tested, group: readonly Tested[]): Removed => ({
	observation: one.observation,
	standardisedResidual: Math.abs(one.test.standardised),
	alternatives: group.map(({observation}) => observation.reading),
});

/**
Data snooping: takes out the reading with the largest standardised residual if it is above the critical value, adjusts
again, until none is. A reading that was taken out first and fits once another is gone is put back.

@param limit - How many may be taken out, those before included.
@param before - Taken out already.
@see Baarda, A testing procedure for use in geodetic networks, Netherlands Geodetic Commission 2 (5), 1968.
*/
export function snoop(snooper: Snooper, whole: Fit, limit: number, before: readonly Removed[] = []): Snooped {
	let fit = whole;
	let removed = before;
	let isReviewed = false;
	for (;;) {
		const found = worstOf(fit, snooper.plausibility);
		if (found && removed.length < limit) {
			removed = [...removed, removedFrom(found.worst, found.group)];
			fit = fitWithout(snooper, fit, found.worst);
			continue;
		}

		const sound = isReviewed ? [] : soundOnes(snooper.network, removed, fit.settled);
		if (sound.length === 0) return {fit, removed, isCutShort: found !== undefined};
		isReviewed = true;
		removed = removed.filter(one => !sound.includes(one));
		const joined = sound.reduce<readonly Joined[]>(
			(used, {observation}) => withReadingBack(used, observation),
			fit.joined,
		);
		const {state} = fit.settled.solved;
		fit = fitFrom(snooper.network, joined, [() => state]);
	}
}
