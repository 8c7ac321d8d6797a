import {unknownSigmaMetres} from './equations.ts';
import type {StateCovariance} from './expectation.ts';
import type {AssumedBy} from './facts.ts';
import type {SurveyNetwork} from './network.ts';
import type {Settled} from './settle.ts';
import type {SolvedNetwork} from './solveNetwork.ts';
import {subtract, type Vector} from './vectors.ts';

/** A displacement of the state that no reading sees, and the points that it moves against the seat. */
type Swing = {readonly motion: Float64Array; readonly moved: readonly number[]};

/** A part of a unit displacement smaller than this is rounding. */
const leastMotion = 1e-3;

/**
Ways in which things may stand otherwise without any reading noticing: turning about the seat, tilting. That the whole
drawing may be anywhere is none of them, since distances and directions from the seat stay; nor is turning the drawing
where the screen is in it, since straight ahead is where the screen is.
*/
function swings({points}: SurveyNetwork, {state, unseen, components, home}: SolvedNetwork): Swing[] {
	const members = [...points.keys()].filter(index => home >= 0 && components[index] === home);
	const base = members.includes(0) ? 0 : members[0];
	if (base === undefined) return [];
	const screen = members.find(index => points[index]!.id === 'screen' && index !== base);
	const from = (values: Float64Array, index: number): Vector => [
		values[index * 3]! - values[base * 3]!,
		values[index * 3 + 1]! - values[base * 3 + 1]!,
		values[index * 3 + 2]! - values[base * 3 + 2]!,
	];
	return unseen.flatMap(motion => {
		const turn = (() => {
			if (screen === undefined) return 0;
			const [x, y] = from(state, screen);
			const [dx, dy] = from(motion, screen);
			return (x * dy - y * dx) / Math.max(x * x + y * y, 1e-9);
		})();
		const relative = new Float64Array(state.length);
		const moved = members.filter(index => {
			const [x, y] = from(state, index);
			const by = subtract(from(motion, index), [-turn * y, turn * x, 0]);
			relative.set(by, index * 3);
			return Math.hypot(...by) > leastMotion;
		});
		return moved.length > 0 ? [{motion: relative, moved}] : [];
	});
}

/** What is assumed of where things stand. */
export type Assumed = {
	/** By place in the list of points. */
	readonly by: ReadonlyMap<number, AssumedBy>;
	/** With the doubt that the assumptions hide: what could be anywhere is unknown, what has two places has their distance. */
	readonly covariance: StateCovariance;
};

/**
Points whose direction a convention gave, or whose side a usual place decided between two that fit the readings alike.
Nothing may be judged from them.

@param covariance - As the readings and conventions give it.
*/
export function assumedPoints(
	network: SurveyNetwork,
	{solved, mirrors}: Settled,
	covariance: StateCovariance,
): Assumed {
	const by = new Map<number, AssumedBy>();
	const {size} = covariance;
	const values = Float64Array.from(covariance.values);
	const widen = (along: Float64Array, metres: number) => {
		for (let a = 0; a < size; a++) {
			if (along[a] === 0) continue;
			for (let b = 0; b < size; b++) values[a * size + b]! += metres ** 2 * along[a]! * along[b]!;
		}
	};

	for (const {motion, moved} of swings(network, solved)) {
		widen(motion, unknownSigmaMetres);
		for (const point of moved) by.set(point, 'direction');
	}

	for (const {point, decidedBy, other} of mirrors) {
		if (decidedBy !== 'side' && decidedBy !== 'nothing') continue;
		by.set(point, 'side');
		const along = new Float64Array(size);
		for (const axis of [0, 1, 2]) along[point * 3 + axis] = other[axis]! - solved.state[point * 3 + axis]!;
		widen(along, Math.SQRT1_2);
	}

	return {by, covariance: {size, values}};
}
