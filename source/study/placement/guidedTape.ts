import {isOverhead} from '../../profile/channels.ts';
import type {Profile} from '../../profile/types.ts';
import {adjustNetwork} from '../survey/adjust.ts';
import {expectationOf, type StateCovariance, sigmaWithReading, withReading} from '../survey/expectation.ts';
import {type Ends, isSamePair, possibleReading} from '../survey/missing.ts';
import {type NetworkPoint, pointsOf} from '../survey/points.ts';
import type {NetworkResult} from '../survey/result.ts';
import {nominalDirection} from '../survey/starts.ts';

/** A reading to take, and why it is worth a walk. */
export type NextReading = Ends & {
	/** Place to stand at: the thing that the tape or laser is held to. */
	readonly station: string;
	readonly why: 'room' | 'place' | 'check';
};

const endsAt = (id: string, to: readonly string[]): Ends[] => to.map(end => ({from: id, to: end}));

/** Speakers in the order of a round through the room: from the front centre to the right, around and back. */
function roundOrder(profile: Profile, points: readonly NetworkPoint[]): NetworkPoint[] {
	const turn = ({id}: NetworkPoint) => {
		const azimuth = nominalDirection(profile, id)?.azimuthDegrees;
		return azimuth === undefined ? 400 : (360 - azimuth) % 360;
	};
	return points.filter(({kind}) => kind === 'speaker' || kind === 'sub').sort((a, b) => turn(a) - turn(b));
}

/** Whether the ceiling's place must be measured because something hangs from it and no height is stated. */
const needsHeight = (profile: Profile) =>
	profile.room.ceiling === undefined && profile.channels.some(({id}) => isOverhead(id));

/**
The readings of a good network in the order of one walk: the room, the seat, the screen, then once around the speakers.

At each speaker: its height, its side wall, the seat, and the wall ahead of or behind it: three of them place it, the
fourth controls the three. A speaker whose every reading is controlled shows a mistyped one by itself.
*/
export function plannedReadings(profile: Profile): NextReading[] {
	const points = pointsOf(profile);
	const seats = points.filter(({kind}) => kind === 'seat');
	const [seat] = seats as [NetworkPoint, ...NetworkPoint[]];
	const planned: NextReading[] = [];
	const add = (why: NextReading['why'], station: string, ends: readonly Ends[]) => {
		for (const one of ends) planned.push({...one, station, why});
	};
	const {widthMetres, lengthMetres} = profile.room;
	if (widthMetres === undefined) add('room', 'wall:left', [{from: 'wall:left', to: 'wall:right'}]);
	if (lengthMetres === undefined) add('room', 'wall:front', [{from: 'wall:front', to: 'wall:back'}]);
	if (needsHeight(profile)) add('room', 'floor', [{from: 'floor', to: 'ceiling'}]);
	for (const {id} of seats) {
		add('place', id, endsAt(id, ['floor', 'wall:left', 'wall:back']));
		if (id === seat.id) add('check', id, endsAt(id, ['wall:right', 'wall:front']));
	}

	add('place', 'screen', endsAt('screen', ['floor', 'wall:left', 'wall:front']));
	add('check', 'screen', endsAt('screen', [seat.id]));
	for (const {id, kind} of roundOrder(profile, points)) {
		const direction = nominalDirection(profile, id);
		const azimuth = direction?.azimuthDegrees ?? 0;
		const isUp = isOverhead(id);
		const height = isUp && profile.room.ceiling ? 'ceiling' : 'floor';
		const side = azimuth < 0 ? 'wall:right' : 'wall:left';
		const ahead = Math.abs(azimuth) > 90 ? 'wall:back' : 'wall:front';
		add('place', id, endsAt(id, [seat.id, height, side]));
		add(kind === 'sub' ? 'place' : 'check', id, endsAt(id, [ahead]));
	}

	return planned;
}

/** Below this a coordinate needs no further reading, metres. */
const goodSigmaMetres = 0.01;
/** Gains within this share of the best are as good, and the shorter way decides. */
const alikeShare = 0.8;

/** Doubt that is left: standard uncertainties of all coordinates, each counted up to one metre and down to a centimetre. */
function doubtOf(points: number, sigmaAt: (offset: number) => number): number {
	let doubt = 0;
	for (let offset = 0; offset < points * 3; offset++) {
		const sigma = sigmaAt(offset);
		doubt += Math.min(1, Math.max(goodSigmaMetres, sigma));
	}

	return doubt;
}

/**
The readings that remove the most doubt, each chosen as if those before it were taken.

Among readings that remove about the same, the one nearest in the walk to the last reading comes first. When nothing is
in doubt any more, the controls that the planned round still lacks follow; an empty list means: enough.

@param count - How many at most.
@param result - The adjusted network, where it is at hand already.
*/
export function nextReadings(
	profile: Profile,
	count: number,
	result: NetworkResult = adjustNetwork(profile),
): NextReading[] {
	const points = pointsOf(profile);
	const taken = (profile.tape ?? []).filter(({setAside}) => !setAside);
	const {ceiling} = result.room;
	const state = Float64Array.from([
		...result.points.flatMap(({at}) => at),
		result.room.widthMetres ?? 4.5,
		result.room.lengthMetres ?? 6,
		ceiling && 'heightMetres' in ceiling ? ceiling.heightMetres : 2.5,
	]);
	const open = plannedReadings(profile)
		.filter(ends => !taken.some(reading => isSamePair(reading, ends)))
		.flatMap((planned, order) => {
			const observation = possibleReading(profile, points, state, planned);
			return observation ? [{planned, order, observation}] : [];
		});
	const chosen: NextReading[] = [];
	let covariance: StateCovariance = result.covariance;
	const last = taken.at(-1);
	let station = last?.from ?? '';
	while (chosen.length < count) {
		const now = covariance;
		const before = doubtOf(points.length, at => Math.sqrt(Math.max(0, now.values[at * now.size + at]!)));
		const tried = open
			.filter(({planned}) => !chosen.includes(planned))
			.map(one => {
				const expected = expectationOf(one.observation, state, now);
				const after = doubtOf(points.length, at => sigmaWithReading(one.observation, now, expected, at));
				return {...one, expected, gain: before - after};
			});
		if (tried.length === 0) break;
		const best = Math.max(...tried.map(({gain}) => gain));
		// Room dimensions tell nothing of a point by themselves, but readings to the far walls need them.
		const alike =
			best < 1e-3
				? tried
				: tried.filter(({gain, planned}) => gain >= best * alikeShare || planned.why === 'room');
		const first = alike.find(({planned}) => planned.station === station) ?? alike[0]!;
		chosen.push(first.planned);
		station = first.planned.station;
		covariance = withReading(first.observation, now, first.expected);
	}

	return chosen;
}
