import type {Profile} from '../../profile/types.ts';
import {type HeldReading, heldOf, isChecked, worstHiddenMetres} from '../survey/checked.ts';
import {unknownSigmaMetres} from '../survey/equations.ts';
import {expectationOf, type StateCovariance, withReading} from '../survey/expectation.ts';
import {type Ends, isSamePair, possibleReading} from '../survey/missing.ts';
import {type SurveyNetwork, surveyNetwork} from '../survey/network.ts';
import {isUsable, type Observation, observationOf} from '../survey/observations.ts';
import {statusOf, worstSigma} from '../survey/placed.ts';
import {criticalValueOf} from '../survey/reliability.ts';
import {joinRepeats} from '../survey/repeats.ts';
import type {NetworkResult} from '../survey/result.ts';
import {roomReadings, type Station, stationsOf} from '../survey/stations.ts';

/** A reading to take, and why it is worth a walk. */
export type NextReading = Ends & {
	/** Place to stand at: the thing that the tape or laser is held to. */
	readonly station: string;
	readonly why: 'room' | 'place' | 'check';
};

/** What is read already or chosen to be read next, and what that tells. */
type Known = {
	readonly taken: readonly Ends[];
	readonly held: readonly HeldReading[];
	readonly covariance: StateCovariance;
};

/** The readings in use, repeats joined. */
function heldReadings({ends}: SurveyNetwork, profile: Profile, {readings}: NetworkResult): HeldReading[] {
	const used = readings
		.filter(({status}) => status === 'used')
		.map(({index}) => observationOf(ends, profile.tape![index]!, index))
		.filter((one): one is Observation => isUsable(one));
	return joinRepeats(used).map(heldOf);
}

function stateOfPlaces({points, room}: NetworkResult): Float64Array {
	const {ceiling} = room;
	return Float64Array.from([
		...points.flatMap(({at}) => at),
		room.widthMetres ?? 4.5,
		room.lengthMetres ?? 6,
		ceiling && 'heightMetres' in ceiling ? ceiling.heightMetres : 2.5,
	]);
}

/** What the network leaves open where conventions hold the drawing: that all of it may be further to a side. */
function withoutHold(
	{covariance, conventions, points}: NetworkResult,
	held: readonly HeldReading[],
): StateCovariance {
	if (conventions.length === 0) return covariance;
	const {size} = covariance;
	const values = Float64Array.from(covariance.values);
	for (const axis of [0, 1, 2] as const) {
		const isTied = held.some(({observation: o}) =>
			o.kind === 'plane' ? o.axis === axis : (o.kind === 'slope' || o.kind === 'broken') && axis === 2,
		);
		if (isTied) continue;
		for (let a = 0; a < points.length; a++) {
			for (let b = 0; b < points.length; b++)
				values[(a * 3 + axis) * size + b * 3 + axis]! += unknownSigmaMetres ** 2;
		}
	}

	return {size, values};
}

/** As if a reading were taken. */
function withTaken(network: SurveyNetwork, state: Float64Array, known: Known, ends: Ends): Known | undefined {
	const observation = possibleReading(network, state, ends);
	if (!observation) return undefined;
	return {
		taken: [...known.taken, ends],
		held: [...known.held, {observation, sigmaMetres: observation.sigmaMetres}],
		covariance: withReading(
			observation,
			known.covariance,
			expectationOf(observation, state, known.covariance),
		),
	};
}

const isOpen = ({taken}: Known, ends: Ends) => !taken.some(reading => isSamePair(reading, ends));

/** A control must make the largest slip that stays hidden smaller by this share to be worth its walk. */
const worthwhileShare = 0.9;

/** The next reading of one station; undefined where its point is determined and checked, or nothing more can be read. */
function nextAt(
	network: SurveyNetwork,
	state: Float64Array,
	known: Known,
	{id, place, check}: Station,
): NextReading | undefined {
	const point = network.points.findIndex(one => one.id === id);
	const open = (ends: readonly string[]) =>
		ends.map((to): Ends => ({from: id, to})).filter(one => isOpen(known, one));
	const isDetermined = (after: Known) => statusOf(worstSigma(after.covariance, point), true) === 'determined';
	const hiddenWith = ({held, covariance}: Known) =>
		worstHiddenMetres(point, held, state, covariance, criticalValueOf(held.length));
	if (!isDetermined(known)) {
		for (const ends of open([...place, ...check])) {
			if (possibleReading(network, state, ends)) return {...ends, station: id, why: 'place'};
		}

		return undefined;
	}

	const hidden = hiddenWith(known);
	if (isChecked(hidden)) return undefined;
	// In order, each as if those before it were taken too, up to the one that makes the difference.
	let after = known;
	for (const ends of open([...place, ...check])) {
		const next = withTaken(network, state, after, ends);
		if (!next) continue;
		after = next;
		const left = hiddenWith(after);
		if (isChecked(left) || left < hidden * worthwhileShare) return {...ends, station: id, why: 'check'};
	}

	return undefined;
}

/**
The readings to take next, each chosen as if those before it were taken: the room's sizes, then thing by thing, the
seat first; each is determined and its control taken before the next is begun. An empty list means: enough.

@param count - How many at most.
@param result - The adjusted network of the profile.
*/
export function nextReadings(profile: Profile, count: number, result: NetworkResult): NextReading[] {
	const network = surveyNetwork(profile);
	const state = stateOfPlaces(result);
	const stations = stationsOf(network);
	const held = heldReadings(network, profile, result);
	let known: Known = {
		taken: (profile.tape ?? []).filter(({setAside}) => !setAside),
		held,
		covariance: withoutHold(result, held),
	};
	const chosen: NextReading[] = [];
	while (chosen.length < count) {
		const now = known;
		const size = roomReadings(profile.room).find(ends => isOpen(now, ends));
		let next: NextReading | undefined = size && {...size, station: size.from, why: 'room'};
		for (let at = 0; !next && at < stations.length; at++) next = nextAt(network, state, now, stations[at]!);
		const after = next && withTaken(network, state, now, next);
		if (!next || !after) break;
		chosen.push(next);
		known = after;
	}

	return chosen;
}
