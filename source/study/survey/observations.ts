import {isLfe} from '../../profile/channels.ts';
import type {Plane, TapeReading} from '../../profile/types.ts';
import {type Holding, holdingOf} from './holding.ts';
import type {NetworkPoint, SurveyInput} from './points.ts';
import {type BrokenCeiling, brokenCeilingOf, type Slope, slopeOf} from './roomSize.ts';
import {tapeSigmaMetres} from './sigma.ts';

/**
One tape reading as an equation. The state holds x, y, z of each point, then width, length and height of the room;
every number that names a place in it is an offset into that state.
*/
export type Observation = {
	/** Place in the profile's list of readings. */
	readonly reading: number;
	readonly metres: number;
	readonly sigmaMetres: number;
} & (
	| {readonly kind: 'points'; readonly from: number; readonly to: number}
	/** To a plane that is square to an axis: the coordinate itself, or a room dimension minus the coordinate. */
	| {readonly kind: 'plane'; readonly point: number; readonly axis: 0 | 1 | 2; readonly dimension?: number}
	/** Shortest way to a sloped ceiling. */
	| {
			readonly kind: 'slope';
			readonly point: number;
			readonly axis: 0 | 1;
			readonly dimension: number;
			readonly heightsMetres: readonly [number, number];
	  }
	/** Shortest way to a ceiling of several heights. */
	| (BrokenCeiling & {readonly kind: 'broken'; readonly point: number})
	| {readonly kind: 'planes'; readonly dimension: number}
);

/** Why a reading cannot be an equation. */
export type Unfit =
	| {readonly code: 'tape-same-ends' | 'tape-planes-meet' | 'tape-slope-height'}
	| {readonly code: 'tape-unknown-end'; readonly end: string; readonly isLfe: boolean}
	| {readonly code: 'tape-zero'; readonly arePlanes: boolean};

export type Unusable = {readonly reading: number; readonly why: Unfit};

const planeAxes: Readonly<Record<Plane, {axis: 0 | 1 | 2; isFar: boolean}>> = {
	'wall:left': {axis: 0, isFar: false},
	'wall:right': {axis: 0, isFar: true},
	'wall:front': {axis: 1, isFar: false},
	'wall:back': {axis: 1, isFar: true},
	floor: {axis: 2, isFar: false},
	ceiling: {axis: 2, isFar: true},
};

export const planeOf = (end: string) => (Object.hasOwn(planeAxes, end) ? planeAxes[end as Plane] : undefined);

/** Everything that tells what the ends of a tape are: made once for a profile. */
export type TapeEnds = {
	/** Places of the points by id. */
	readonly places: ReadonlyMap<string, number>;
	/** Subs of each LFE channel. */
	readonly fed: ReadonlyMap<string, readonly string[]>;
	readonly holding: Holding;
	readonly slope?: Slope;
	readonly broken?: BrokenCeiling;
};

/** What the ends of a profile's tape readings mean. */
export function tapeEndsOf(profile: SurveyInput, points: readonly NetworkPoint[]): TapeEnds {
	const fed = new Map<string, string[]>();
	for (const {id, fedBy} of profile.subs ?? []) fed.set(fedBy, [...(fed.get(fedBy) ?? []), id]);
	const slope = slopeOf(profile.room);
	const broken = brokenCeilingOf(profile.room);
	return {
		places: new Map(points.map(({id}, index) => [id, index])),
		fed,
		holding: holdingOf(profile),
		...(slope && {slope}),
		...(broken && {broken}),
	};
}

/** The point that an end of the tape means, −1 for none. An LFE channel means its sub where it has just one. */
export function pointIndex({places, fed}: TapeEnds, end: string): number {
	const direct = places.get(end);
	if (direct !== undefined || !isLfe(end)) return direct ?? -1;
	const subs = fed.get(end) ?? [];
	return subs.length === 1 ? (places.get(subs[0]!) ?? -1) : -1;
}

/**
Turns a tape reading into an equation, or says why it cannot be one.

@param index - Place of the reading in the profile's list.
*/
export function observationOf(ends: TapeEnds, tape: TapeReading, index: number): Observation | Unusable {
	const no = (why: Unfit): Unusable => ({reading: index, why});
	const {from, to} = tape;
	// Written out below: thousands of these are made while a reading is typed, and spreading is slow.
	const {metres} = tape;
	const reading = index;
	const sigmaMetres = tapeSigmaMetres(tape, ends.holding);
	const dimensions = ends.places.size * 3;
	if (from === to) return no({code: 'tape-same-ends'});
	const end = (name: string) => ({name, plane: planeOf(name), point: pointIndex(ends, name)});
	const one = end(from);
	const other = end(to);
	for (const {name, plane, point} of [one, other]) {
		if (!plane && point < 0) {
			return no({code: 'tape-unknown-end', end: name, isLfe: isLfe(name)});
		}
	}

	const {slope, broken} = ends;
	if (one.plane && other.plane) {
		if (one.plane.axis !== other.plane.axis) {
			return no({code: 'tape-planes-meet'});
		}

		if (one.plane.axis === 2 && (slope || broken)) {
			return no({code: 'tape-slope-height'});
		}

		if (metres === 0) return no({code: 'tape-zero', arePlanes: true});
		return {reading, metres, sigmaMetres, kind: 'planes', dimension: dimensions + one.plane.axis};
	}

	const plane = one.plane ?? other.plane;
	if (!plane) {
		if (tape.metres === 0) return no({code: 'tape-zero', arePlanes: false});
		if (one.point === other.point) return no({code: 'tape-same-ends'});
		return {reading, metres, sigmaMetres, kind: 'points', from: one.point * 3, to: other.point * 3};
	}

	const point = (one.plane ? other.point : one.point) * 3;
	if (plane.axis === 2 && plane.isFar && slope) {
		return {
			reading,
			metres,
			sigmaMetres,
			kind: 'slope',
			point,
			axis: slope.axis,
			dimension: dimensions + slope.axis,
			heightsMetres: slope.heightsMetres,
		};
	}

	if (plane.axis === 2 && plane.isFar && broken)
		return {reading, metres, sigmaMetres, kind: 'broken', point, axis: broken.axis, places: broken.places};
	const {axis} = plane;
	return plane.isFar
		? {reading, metres, sigmaMetres, kind: 'plane', point, axis, dimension: dimensions + axis}
		: {reading, metres, sigmaMetres, kind: 'plane', point, axis};
}

/** Whether `observationOf` could make an equation. */
export const isUsable = (made: Observation | Unusable): made is Observation => 'kind' in made;

const pointsTouched = (observation: Observation): number[] => {
	if (observation.kind === 'planes') return [];
	return observation.kind === 'points' ? [observation.from, observation.to] : [observation.point];
};

/** Whether two observations have a point in common. */
export const offsetsTouch = (one: Observation, other: Observation) =>
	pointsTouched(one).some(point => pointsTouched(other).includes(point));
