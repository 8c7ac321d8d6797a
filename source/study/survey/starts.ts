import type {ChannelId} from '../../profile/channels.ts';
import {layoutOf} from '../../profile/layouts.ts';
import {type Direction, unitVector} from './directions.ts';
import {bestPlace} from './localFit.ts';
import type {Observation} from './observations.ts';
import type {NetworkPoint, SurveyInput} from './points.ts';
import {slopeOf} from './roomSize.ts';
import {add, scale, type Vector} from './vectors.ts';

/** A usual home room and where things stand in it, metres: starts for the iteration, never results. */
const usual = {width: 4.5, length: 6, height: 2.5, ear: 1.05, screen: 1.2, sub: 0.25, distance: 2.5} as const;

/** Direction in which a speaker stands, seen from the reference seat; undefined for what has no usual side. */
export function nominalDirection(profile: Pick<SurveyInput, 'channels'>, id: string): Direction | undefined {
	return layoutOf(profile.channels.map(channel => channel.id)).places.get(id as ChannelId);
}

/** First guess of width, length and height: exact, read, summed from two opposite walls, or usual. */
function firstDimensions(profile: SurveyInput, observations: readonly Observation[], points: number): Vector {
	const {widthMetres, lengthMetres, ceiling} = profile.room;
	const exact = [widthMetres, lengthMetres, ceiling?.kind === 'flat' ? ceiling.heightMetres : undefined];
	const slope = slopeOf(profile.room);
	const guess = [usual.width, usual.length, slope ? Math.max(...slope.heightsMetres) : usual.height];
	return [0, 1, 2].map(axis => {
		if (exact[axis] !== undefined) return exact[axis];
		const dimension = points * 3 + axis;
		const read = observations.find(o => o.kind === 'planes' && o.dimension === dimension);
		if (read) return read.metres;
		const near = new Map<number, number>();
		for (const o of observations) {
			if (o.kind === 'plane' && o.axis === axis && o.dimension === undefined) near.set(o.point, o.metres);
		}

		const sums = observations.flatMap(o =>
			o.kind === 'plane' && o.dimension === dimension ? [o.metres + (near.get(o.point) ?? 0)] : [],
		);
		return sums.length > 0 ? Math.max(...sums, guess[axis]! * 0.5) : guess[axis]!;
	}) as unknown as Vector;
}

/** Coordinates that readings to planes give directly, NaN where none does: shape as the state's points. */
export function coordinatesFromPlanes(
	observations: readonly Observation[],
	points: number,
	dimensions: Vector,
): Float64Array {
	const known = new Float64Array(points * 3).fill(Number.NaN);
	for (const o of observations) {
		if (o.kind !== 'plane' || !Number.isNaN(known[o.point + o.axis]!)) continue;
		known[o.point + o.axis] = o.dimension === undefined ? o.metres : dimensions[o.axis]! - o.metres;
	}

	return known;
}

/** Where a point would stand if everything were usual, from the place of the reference seat. */
function usualPlace(
	profile: SurveyInput,
	point: NetworkPoint,
	index: number,
	seat: Vector,
	away: number,
): Vector {
	if (point.kind === 'seat') return index === 0 ? seat : add(seat, [index % 2 ? 0.7 : -0.7, 0.1 * index, 0]);
	if (point.kind === 'screen') return [seat[0], Math.max(seat[1] - away, 0.05), usual.screen];
	const direction = nominalDirection(profile, point.id);
	if (direction) return add(seat, scale(unitVector(direction), away));
	// Subs have no usual side: spread along the front wall so that no two start in one place.
	return [seat[0] + 0.8 * (index % 2 ? 1 : -1) + 0.1 * index, Math.max(seat[1] - away, 0.3), usual.sub];
}

/**
A state to start the adjustment from: coordinates read off walls and floor, the rest fitted point by point to what is
already placed, from the side where each channel belongs.
*/
export function startState(
	profile: SurveyInput,
	points: readonly NetworkPoint[],
	observations: readonly Observation[],
): Float64Array {
	const state = new Float64Array(points.length * 3 + 3);
	const dimensions = firstDimensions(profile, observations, points.length);
	state.set(dimensions, points.length * 3);
	const known = coordinatesFromPlanes(observations, points.length, dimensions);
	const knownAxes = (index: number) => [0, 1, 2].filter(axis => !Number.isNaN(known[index * 3 + axis]!));
	const put = (index: number, at: Vector) => {
		for (const axis of [0, 1, 2]) {
			const direct = known[index * 3 + axis]!;
			state[index * 3 + axis] = Number.isNaN(direct) ? at[axis]! : direct;
		}
	};

	const touching = points.map(() => [] as Observation[]);
	for (const o of observations) {
		if (o.kind === 'points') {
			touching[o.from / 3]!.push(o);
			touching[o.to / 3]!.push(o);
		} else if (o.kind !== 'planes') touching[o.point / 3]!.push(o);
	}

	put(0, [dimensions[0] / 2, dimensions[1] * 0.6, usual.ear]);
	const isPlaced = points.map((_, index) => knownAxes(index).length === 3);
	for (const [index, isDone] of isPlaced.entries()) if (isDone) put(index, [0, 0, 0]);
	if (!isPlaced.some(Boolean)) isPlaced[0] = true;
	const otherEnd = (o: Observation, index: number) =>
		o.kind === 'points' ? (o.from / 3 === index ? o.to : o.from) / 3 : undefined;
	for (let round = 0; round < points.length; round++) {
		let next = -1;
		let most = -1;
		for (const [index, isDone] of isPlaced.entries()) {
			if (isDone) continue;
			const links = touching[index]!.filter(o => isPlaced[otherEnd(o, index) ?? index]).length;
			if (links > most) [next, most] = [index, links];
		}

		if (next < 0) break;
		const seat: Vector = [state[0]!, state[1]!, state[2]!];
		const toSeat = touching[next]!.find(o => otherEnd(o, next) === 0);
		put(next, usualPlace(profile, points[next]!, next, seat, toSeat?.metres ?? usual.distance));
		const usable = touching[next]!.filter(
			o => isPlaced[otherEnd(o, next) ?? next] || otherEnd(o, next) === undefined,
		);
		if (usable.length > knownAxes(next).length) bestPlace(usable, state, next, knownAxes(next));
		isPlaced[next] = true;
	}

	return state;
}
