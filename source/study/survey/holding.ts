import {planes} from '../../profile/planes.ts';
import {usuallyHeldMetres, usualTapeStepMetres} from '../../profile/practice.ts';
import type {Profile, TapeReading} from '../../profile/types.ts';
import {median} from '../../science/numeric/statistics.ts';

/** How well the tape is read and held: what the uncertainty of a reading without its own is made of. */
export type Holding = {
	/** Smallest division that is read, metres. */
	readonly stepMetres: number;
	/** Standard uncertainty of one end, metres: a seat's ear, the centre of a speaker, sub or screen, a wall, floor or ceiling. */
	readonly heldMetres: {readonly seat: number; readonly centre: number; readonly plane: number};
	readonly seats: ReadonlySet<string>;
};

/** Standard deviation of a tape that is held perfectly, metres and metres a metre: common practice, no source. */
export const tapeSigmaAt = (metres: number, stepMetres: number) =>
	Math.hypot(0.002, 0.001 * metres, stepMetres / Math.sqrt(12));

const planeNames: ReadonlySet<string> = new Set(planes);

/** How well one end of the tape can be held, metres. */
export function heldMetresAt(end: string, {heldMetres, seats}: Holding): number {
	if (planeNames.has(end)) return heldMetres.plane;
	return seats.has(end) ? heldMetres.seat : heldMetres.centre;
}

/** Repeats that it takes before they say more of the hands than was assumed. */
const enoughRepeats = 12;
/** The assumption weighs as much as so many repeats. */
const assumptionWeight = 20;
/** A median of as many values is as sure as a mean of this share of them. @see Rousseeuw and Croux, Journal of the American Statistical Association 88 (1993) 1273. */
const medianEfficiency = 0.37;
/** Median of |x| for a normal variable of deviation 1. */
const medianOfNormal = 0.674_489_75;

/**
By how much the hands are better or worse than assumed, from repeats of one pair of ends: each against the one before
it, so that nobody's slip and no drift spoils it.
*/
function handsFactor(tape: readonly TapeReading[], assumed: Holding): number {
	const last = new Map<string, number>();
	const differences: number[] = [];
	for (const {from, to, metres, sigmaMetres, setAside} of tape) {
		if (setAside || sigmaMetres !== undefined) continue;
		const pair = from < to ? `${from}|${to}` : `${to}|${from}`;
		const before = last.get(pair);
		last.set(pair, metres);
		if (before === undefined) continue;
		const sigma = Math.hypot(
			tapeSigmaAt(metres, assumed.stepMetres),
			heldMetresAt(from, assumed),
			heldMetresAt(to, assumed),
		);
		differences.push(Math.abs(metres - before) / (Math.SQRT2 * sigma));
	}

	if (differences.length < enoughRepeats) return 1;
	const variance = (median(differences) / medianOfNormal) ** 2;
	const weight = medianEfficiency * differences.length;
	return Math.sqrt((assumptionWeight + weight * variance) / (assumptionWeight + weight));
}

/**
How the tape of a profile is read and held: as its kit says; where that is silent as usual, corrected by the repeats
in the profile once there are enough of them.
*/
export function holdingOf({kit, seats, tape = []}: Pick<Profile, 'kit' | 'seats' | 'tape'>): Holding {
	const said = kit?.tapeHeldMetres;
	const assumed: Holding = {
		stepMetres: kit?.tapeStepMetres ?? usualTapeStepMetres,
		heldMetres: {
			seat: said?.seat ?? usuallyHeldMetres.seat,
			centre: said?.centre ?? usuallyHeldMetres.centre,
			plane: said?.plane ?? usuallyHeldMetres.plane,
		},
		seats: new Set(seats.map(({id}) => id)),
	};
	if (said) return assumed;
	const factor = handsFactor(tape, assumed);
	if (factor === 1) return assumed;
	const {seat, centre, plane} = assumed.heldMetres;
	return {...assumed, heldMetres: {seat: seat * factor, centre: centre * factor, plane: plane * factor}};
}
