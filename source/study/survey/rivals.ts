import {expectationOf} from './expectation.ts';
import {type Observation, offsetsTouch} from './observations.ts';
import {stateCovariance} from './placed.ts';
import {redundancyNumbers, standardisedResiduals} from './reliability.ts';
import {settle} from './settle.ts';
import {jumpMetres, type Plausibility, type Removed, type Snooped} from './snooping.ts';
import {type Network, solveNetwork} from './solveNetwork.ts';
import {nominalDirection} from './starts.ts';

/** Half a sum of squares within which another explanation fits as well. */
const alikeCost = 3;
/** A suspect that a usual slip explains this well, with everything on its own side, needs no rival. */
const explained = 0.5;
/** A point has hardly more readings that differ in kind; with many repeats the look would take long. */
const mostRivals = 16;
/** With more suspects than this, one explanation proves nothing. */
const mostSuspects = 3;
/** A cause must explain the rival better by this to take the place of what the test found. */
const lead = 0.1;

/** Speakers that an explanation puts on the side where they do not belong. Near the middle line there are no sides. */
function wrongSides({profile, points}: Network, {solved}: Snooped['settled']): number {
	const [seat] = solved.state;
	return points.filter(({id}, index) => {
		const azimuth = nominalDirection(profile, id)?.azimuthDegrees ?? 0;
		if (Math.abs(azimuth) < 15 || Math.abs(azimuth) > 165 || solved.components[index]! < 0) return false;
		const aside = solved.state[index * 3]! - seat!;
		return Math.abs(aside) > 0.3 && Math.sign(aside) === Math.sign(azimuth);
	}).length;
}

function plausibilityOf(
	network: Network,
	one: Observation,
	settled: Snooped['settled'],
	plausibility: Plausibility,
) {
	const {metres, sigmaMetres} = expectationOf(
		one,
		settled.solved.state,
		stateCovariance(network, settled.solved),
	);
	return {
		error: one.metres - metres,
		score:
			plausibility(one, metres, Math.hypot(sigmaMetres, one.sigmaMetres), settled) -
			wrongSides(network, settled),
	};
}

/**
Looks for another reading whose removal explains a large blunder as well.

The test is linear: when a wrong reading pulls a point over to its mirror side, it is a sound one that disagrees there.
So each reading at the same point is left out in turn, from a fresh start; of the explanations that fit alike, the one
with a usual cause is taken, and the others are named.

@returns The same where nothing fits as well.
*/
export function withRivals(
	network: Network,
	snooped: Snooped,
	startFor: (used: readonly Observation[]) => Float64Array,
	plausibility: Plausibility,
): Snooped {
	let best = snooped;
	if (snooped.removed.length > mostSuspects) return snooped;
	for (const removed of snooped.removed) {
		const own = plausibilityOf(network, removed.observation, best.settled, plausibility);
		if (Math.abs(own.error) < jumpMetres || own.score > explained || !best.removed.includes(removed))
			continue;
		const rivals = best.used
			.filter(one => offsetsTouch(one, removed.observation))
			.slice(0, mostRivals)
			.flatMap(rival => {
				const used = [...best.used.filter(one => one !== rival), removed.observation];
				const start = startFor(used);
				const isAlike = solveNetwork(network, used, start).cost <= best.settled.solved.cost + alikeCost;
				if (!isAlike) return [];
				const settled = settle(network, used, start);
				return [{rival, used, settled, ...plausibilityOf(network, rival, settled, plausibility)}];
			});
		if (rivals.length === 0) continue;
		const first = rivals.reduce((a, b) => (b.score > a.score ? b : a));
		const isTaken = first.score > own.score + lead;
		const others = [removed.observation, ...rivals.map(({rival}) => rival)]
			.filter(one => one !== (isTaken ? first.rival : removed.observation))
			.map(({reading}) => reading);
		const named: Removed = {
			...removed,
			observation: isTaken ? first.rival : removed.observation,
			alternatives: [...new Set([...others, ...(isTaken ? [] : removed.alternatives)])],
		};
		const list = best.removed.map(one => (one === removed ? named : one));
		if (!isTaken) {
			best = {...best, removed: list};
			continue;
		}

		const redundancy = redundancyNumbers(first.settled.solved.rows, first.used.length);
		best = {
			...best,
			settled: first.settled,
			used: first.used,
			removed: list,
			redundancy,
			standardised: standardisedResiduals(first.settled.solved.rows, redundancy),
		};
	}

	return best;
}
