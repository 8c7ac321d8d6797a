import {metresPerFoot} from '../../profile/units/length.ts';
import {offsetsOf, predict, rowWidth} from './equations.ts';
import type {StateCovariance} from './expectation.ts';
import type {Observation} from './observations.ts';
import {detectableMetresOf} from './reliability.ts';
import type {Joined} from './repeats.ts';

/** A slip that a finished point must not hide, metres: the smallest of the usual great ones. */
const slipMetres = metresPerFoot;
/** A slip that moves a point by less than this does no harm, metres: as well as a point must be known. */
const harmlessMetres = 0.05;

/** A reading in use, with its repeats. */
export type HeldReading = {
	readonly observation: Observation;
	/** Of the surest repeat, metres: the one whose slip shows least. */
	readonly sigmaMetres: number;
};

export const heldOf = ({observation, members}: Joined): HeldReading => ({
	observation,
	sigmaMetres: members.reduce(
		(least, {sigmaMetres}) => Math.min(least, sigmaMetres),
		Number.POSITIVE_INFINITY,
	),
});

/** Readings that a point's place comes from: its own, and those of the room's sizes that they lean on. */
export function heldBy(point: number, held: readonly HeldReading[]): HeldReading[] {
	const own = held.filter(({observation: o}) =>
		o.kind === 'points'
			? o.from === point * 3 || o.to === point * 3
			: o.kind !== 'planes' && o.point === point * 3,
	);
	const leantOn = new Set(own.flatMap(({observation: o}) => (o.kind === 'plane' ? [o.dimension] : [])));
	return [...own, ...held.filter(({observation: o}) => o.kind === 'planes' && leantOn.has(o.dimension))];
}

/** Largest slip that a reading could hide from its test, metres; what moves the point by next to nothing counts as none. */
function hiddenMetres(
	{observation, sigmaMetres}: HeldReading,
	point: number,
	state: Float64Array,
	{size, values}: StateCovariance,
	critical: number,
): number {
	const slopes = new Float64Array(rowWidth);
	predict(observation, state, slopes);
	const offsets = offsetsOf(observation);
	let variance = 0;
	for (const [a, row] of offsets.entries()) {
		for (const [b, column] of offsets.entries())
			variance += slopes[a]! * slopes[b]! * values[row * size + column]!;
	}

	const detectable = detectableMetresOf(sigmaMetres, 1 - variance / sigmaMetres ** 2, critical);
	if (detectable <= slipMetres) return detectable;
	const moves = [0, 1, 2].map(axis => {
		const at = (point * 3 + axis) * size;
		return offsets.reduce((sum, offset, place) => sum + slopes[place]! * values[at + offset]!, 0);
	});
	return (Math.hypot(...moves) * slipMetres) / sigmaMetres ** 2 <= harmlessMetres ? 0 : detectable;
}

/** Largest slip that any reading of a point could hide, metres; infinite where one has no control at all. */
export function worstHiddenMetres(
	point: number,
	held: readonly HeldReading[],
	state: Float64Array,
	covariance: StateCovariance,
	critical: number,
): number {
	const mine = heldBy(point, held);
	if (mine.length === 0) return Number.POSITIVE_INFINITY;
	return mine.reduce(
		(worst, one) => Math.max(worst, hiddenMetres(one, point, state, covariance, critical)),
		0,
	);
}

/**
Whether a point that is determined is checked too: a slip of a foot in any of its readings would be noticed with a
probability of 80 % at least, or hardly move it.
*/
export const isChecked = (hidden: number): boolean => hidden <= slipMetres;
