import type {Observation} from './observations.ts';

/**
Repeats of one reading as one observation: their weighted mean with the sigma of a mean. The adjustment of the means is
that of the repeats themselves: the same places and the same covariance.

@see Ghilani and Wolf, Adjustment Computations, chapter 10: weights of means.
*/
export type Joined = {
	readonly observation: Observation;
	readonly members: readonly Observation[];
};

/** What an observation is a reading of: the same for repeats, whichever way round the tape was held. */
function stretchKey(observation: Observation): string {
	switch (observation.kind) {
		case 'points': {
			const {from, to} = observation;
			return from < to ? `${from} ${to}` : `${to} ${from}`;
		}

		case 'plane':
			return `${observation.point} ${observation.axis} ${observation.dimension ?? 'near'}`;
		case 'slope':
		case 'broken':
			return `${observation.point} slope`;
		default:
			return `planes ${observation.dimension}`;
	}
}

/** Groups readings of the same stretch, in the order in which each first appears. */
export function byStretch(observations: readonly Observation[]): Observation[][] {
	const groups = new Map<string, Observation[]>();
	for (const observation of observations) {
		const key = stretchKey(observation);
		const group = groups.get(key);
		if (group) group.push(observation);
		else groups.set(key, [observation]);
	}

	return [...groups.values()];
}

/** One observation for readings of one stretch; a single one stays as it is. */
function joinedOf(members: readonly Observation[]): Joined {
	const [first] = members as [Observation, ...Observation[]];
	if (members.length === 1) return {observation: first, members};
	let weights = 0;
	let sum = 0;
	for (const {metres, sigmaMetres} of members) {
		const weight = 1 / sigmaMetres ** 2;
		weights += weight;
		sum += weight * metres;
	}

	return {observation: {...first, metres: sum / weights, sigmaMetres: 1 / Math.sqrt(weights)}, members};
}

/** Readings with their repeats joined. */
export const joinRepeats = (observations: readonly Observation[]): Joined[] =>
	byStretch(observations).map(joinedOf);

/** The same without one of the readings. */
export function withoutReading(joined: readonly Joined[], out: Observation): Joined[] {
	return joined.flatMap(one => {
		if (!one.members.includes(out)) return [one];
		const members = one.members.filter(member => member !== out);
		return members.length > 0 ? [joinedOf(members)] : [];
	});
}

/** The same with a reading put back. */
export function withReadingBack(joined: readonly Joined[], back: Observation): Joined[] {
	const stretch = stretchKey(back);
	const at = joined.findIndex(({observation}) => stretchKey(observation) === stretch);
	if (at < 0) return [...joined, joinedOf([back])];
	return joined.with(at, joinedOf([...joined[at]!.members, back]));
}

/** Half a sum of squares that the repeats have among themselves: no adjustment can take it away. */
export function costAmongRepeats(joined: readonly Joined[]): number {
	let cost = 0;
	for (const {observation, members} of joined) {
		if (members.length === 1) continue;
		for (const {metres, sigmaMetres} of members)
			cost += ((metres - observation.metres) / sigmaMetres) ** 2 / 2;
	}

	return cost;
}
