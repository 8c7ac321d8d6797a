import {isOverhead} from '../../profile/channels.ts';
import {predict, rowWidth} from './equations.ts';
import {expectationOf, type StateCovariance, sigmaWithReading, withReading} from './expectation.ts';
import type {SurveyNetwork} from './network.ts';
import {isUsable, type Observation, observationOf} from './observations.ts';
import {statusOf, worstSigma} from './placed.ts';
import {tapeSigmaMetres} from './sigma.ts';

export type Ends = {readonly from: string; readonly to: string};

/** A reading that could be taken, as an equation with the sigma it would have; undefined where it cannot be one. */
export function possibleReading(
	{ends: known}: SurveyNetwork,
	state: Float64Array,
	ends: Ends,
): Observation | undefined {
	const made = observationOf(known, {...ends, metres: 1}, -1);
	if (!isUsable(made)) return undefined;
	const metres = Math.abs(predict(made, state, new Float64Array(rowWidth)));
	return {...made, metres, sigmaMetres: tapeSigmaMetres({...ends, metres}, known.holding)};
}

/** Whether two pairs of ends are the same reading, whichever way round. */
export const isSamePair = (a: Ends, b: Ends) =>
	(a.from === b.from && a.to === b.to) || (a.from === b.to && a.to === b.from);

/** Distances to more than a few things that stand fast offer nothing new. */
const mostHelpers = 3;
/** More readings than this are not needed for one point of three coordinates. */
const mostReadings = 3;

/**
The readings that would fix a point, in order: each time the one that leaves the least doubt; among those that do so
alike (within a fifth) the one that is easiest to take, heights and walls before distances.

@param helpers - Ids of points that are themselves determined, the reference seat first.
*/
export function missingTape(
	network: SurveyNetwork,
	state: Float64Array,
	covariance: StateCovariance,
	point: number,
	helpers: readonly string[],
): Ends[] {
	const {profile, points} = network;
	const {id, kind} = points[point]!;
	const isUp = isOverhead(id);
	const heights = isUp ? ['ceiling', 'floor'] : ['floor', 'ceiling'];
	const isRight = /R[cwd]?$|^RS/.test(id);
	const sides = isRight ? ['wall:right', 'wall:left'] : ['wall:left', 'wall:right'];
	const isBehind = kind === 'seat' || /^(B|LS|RS|TpB|TpLS|TpRS)/.test(id);
	const ahead = isBehind ? ['wall:back', 'wall:front'] : ['wall:front', 'wall:back'];
	const taken = (profile.tape ?? []).filter(({setAside}) => !setAside);
	const offers = [
		...heights,
		...sides,
		...ahead,
		...helpers.filter(helper => helper !== id).slice(0, mostHelpers),
	]
		.map(to => ({from: id, to}))
		.filter(ends => !taken.some(reading => isSamePair(reading, ends)))
		.flatMap(ends => {
			const observation = possibleReading(network, state, ends);
			return observation ? [{ends, observation}] : [];
		});
	const chosen: Ends[] = [];
	let current = covariance;
	while (chosen.length < mostReadings && statusOf(worstSigma(current, point), true) !== 'determined') {
		const tried = offers
			.filter(({ends}) => !chosen.includes(ends))
			.map(({ends, observation}) => {
				const expected = expectationOf(observation, state, current);
				// The sum over the axes falls with every reading; the worst axis alone only when the last one is tied.
				const doubt = [0, 1, 2].reduce(
					(sum, axis) => sum + sigmaWithReading(observation, current, expected, point * 3 + axis),
					0,
				);
				return {ends, observation, expected, doubt: Math.max(doubt, 0.01)};
			});
		const least = Math.min(...tried.map(({doubt}) => doubt));
		const best = tried.find(({doubt}) => doubt <= least * 1.2);
		if (!best) break;
		chosen.push(best.ends);
		current = withReading(best.observation, current, best.expected);
	}

	return chosen;
}
