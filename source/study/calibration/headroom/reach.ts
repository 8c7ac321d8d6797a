import type {HeadroomLack} from './facts.ts';

/** What a data sheet says of a speaker and its amplifier, as far as its loudest level goes. */
export type PowerData = {
	readonly sensitivityDb?: number | undefined;
	readonly sensitivityFor?: '1 W' | '2.83 V' | undefined;
	readonly impedanceOhms?: number | undefined;
	readonly amplifierWatts?: number | undefined;
};

/** What 2.83 V means: 8 V², which is one watt in 8 ohms. @see IEC 60268-5 for the rated conditions (from memory). */
const sensitivityVoltsSquared = 8;

/**
Level that a speaker reaches at 1 m with all of its amplifier's power.

Sensitivity for 1 W: S + 10·lg P. Sensitivity for 2.83 V: S + 10·lg(P·Z/8), as the amplifier's voltage is √(P·Z).

@param data - Watts are continuous sine power into the stated impedance.
@returns dB at 1 m, or the missing fields. A sensitivity of unstated kind counts as for 2.83 V; into 8 ohms they are one.
*/
export function reachAtOneMetre(
	data: PowerData,
): {readonly decibels: number} | {readonly missing: readonly HeadroomLack[]} {
	const {sensitivityDb, amplifierWatts, impedanceOhms} = data;
	const isForVolts = (data.sensitivityFor ?? '2.83 V') === '2.83 V';
	const missing: HeadroomLack[] = [
		...(sensitivityDb === undefined ? ['sensitivity' as const] : []),
		...(amplifierWatts === undefined ? ['amplifier power' as const] : []),
		...(isForVolts && impedanceOhms === undefined ? ['impedance' as const] : []),
	];
	if (sensitivityDb === undefined || amplifierWatts === undefined || missing.length > 0) return {missing};
	const power = isForVolts ? (amplifierWatts * impedanceOhms!) / sensitivityVoltsSquared : amplifierWatts;
	return {decibels: sensitivityDb + 10 * Math.log10(power)};
}

/** Nearer than this nobody's ear is to a cone, and a point source would be infinitely loud. */
const nearestM = 0.1;

/**
Level at a distance from the level at 1 m, for a point source in the open: −20·lg d.

@param distanceM - Metres; below 0.1 as 0.1.
*/
export function atDistance(levelAtOneMetreDb: number, distanceM: number): number {
	return levelAtOneMetreDb - 20 * Math.log10(Math.max(nearestM, distanceM));
}
