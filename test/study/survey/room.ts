import type {ChannelId} from '../../../source/profile/channels.ts';
import type {Plane, Profile, TapeReading} from '../../../source/profile/types.ts';
import {predict} from '../../../source/study/survey/equations.ts';
import {holdingOf} from '../../../source/study/survey/holding.ts';
import {isUsable, observationOf, tapeEndsOf} from '../../../source/study/survey/observations.ts';
import {pointsOf} from '../../../source/study/survey/points.ts';
import {tapeSigmaMetres} from '../../../source/study/survey/sigma.ts';
import type {Vector} from '../../../source/study/survey/vectors.ts';

/** An invented room of 4.2 m by 5.6 m by 2.45 m with a 5.1.2 layout. */
export const inventedPlaces: Readonly<Record<string, Vector>> = {
	sofa: [2.1, 3.6, 1.05],
	screen: [2.1, 0.04, 1.15],
	FL: [0.85, 0.4, 1.0],
	FR: [3.35, 0.42, 1.0],
	FC: [2.1, 0.3, 0.7],
	LS: [0.1, 4.3, 1.25],
	RS: [4.1, 4.28, 1.25],
	TpSiL: [1.15, 3.3, 2.4],
	TpSiR: [3.05, 3.3, 2.4],
	sub1: [0.5, 0.5, 0.25],
};
export const inventedSize: Vector = [4.2, 5.6, 2.45];

export type Ends = readonly [from: string, to: string];

/** Normal numbers of mean 0 and deviation 1 from a seed. @see Park and Miller (1988); Box and Muller (1958). */
export function gaussian(seed: number): () => number {
	let state = (seed * 2654435761) % 2147483647 || 1;
	const uniform = () => {
		state = (state * 48271) % 2147483647;
		return state / 2147483647;
	};

	for (let skip = 0; skip < 10; skip++) uniform();
	return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}

/** A profile of the invented room, without readings. */
export function bareProfile(
	places: Readonly<Record<string, Vector>> = inventedPlaces,
	room: Partial<Profile['room']> = {},
): Profile {
	const ids = Object.keys(places);
	return {
		format: 1,
		name: 'Invented room',
		date: '2026-04-18',
		room: {name: 'Invented room', ...room},
		seats: ids
			.filter(id => /^(sofa|chair)/.test(id))
			.map((id, index) => ({id, name: id === 'sofa' ? 'Sofa middle' : id, reference: index === 0})),
		channels: [...ids.filter(id => /^[A-Z]/.test(id)), 'LFE1'].map(id => ({id: id as ChannelId})),
		subs: ids
			.filter(id => id.startsWith('sub'))
			.map(id => ({id, name: `Sub ${id.slice(3)}`, fedBy: 'LFE1' as const})),
	};
}

/** What the tape would read between two ends, without error. */
export function trueReading(
	profile: Profile,
	places: Readonly<Record<string, Vector>>,
	size: Vector,
	[from, to]: Ends,
): number {
	const points = pointsOf(profile);
	const state = Float64Array.from([...points.flatMap(({id}) => places[id] ?? [0, 0, 0]), ...size]);
	const observation = observationOf(tapeEndsOf(profile, points), {from, to, metres: 1}, 0);
	if (!isUsable(observation)) throw new Error(`${from} to ${to}: ${observation.why}`);
	return predict(observation, state, new Float64Array(6));
}

/** Adds readings with errors as large as their sigmas say, from a seed; none where the seed is undefined. */
export function withReadings(
	profile: Profile,
	ends: readonly Ends[],
	{
		seed,
		places = inventedPlaces,
		size = inventedSize,
	}: {seed?: number; places?: Readonly<Record<string, Vector>>; size?: Vector} = {},
): Profile {
	const holding = holdingOf({...profile, tape: []});
	const random = seed === undefined ? () => 0 : gaussian(seed);
	const tape = ends.map(([from, to]): TapeReading => {
		const exact = trueReading(profile, places, size, [from, to]);
		const metres = Math.max(0, exact + random() * tapeSigmaMetres({from, to, metres: exact}, holding));
		return {from, to, metres: Math.round(metres * 1e6) / 1e6};
	});
	return {...profile, tape: [...(profile.tape ?? []), ...tape]};
}

/** A thorough round: three walls or floor, and the seat, for everything; pairs; the room. */
export function thoroughEnds(profile: Profile): Ends[] {
	const planes: readonly Plane[] = ['wall:left', 'wall:front', 'floor'];
	const points = pointsOf(profile).map(({id}) => id);
	const [seat] = points;
	return [
		['wall:left', 'wall:right'],
		['wall:front', 'wall:back'],
		['floor', 'ceiling'],
		[seat!, 'wall:right'],
		...points.flatMap(id => planes.map((plane): Ends => [id, plane])),
		...points.slice(1).map((id): Ends => [id, seat!]),
		...(['FL FR', 'LS RS', 'TpSiL TpSiR', 'FL FC', 'FC FR', 'FL LS', 'FR RS', 'FL sub1'] as const).flatMap(
			(pair): Ends[] => {
				const [a, b] = pair.split(' ') as [string, string];
				return points.includes(a) && points.includes(b) ? [[a, b]] : [];
			},
		),
	];
}
