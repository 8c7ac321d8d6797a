import type {LengthUnit} from '../../profile/types.ts';
import {readLength} from '../../profile/units/length.ts';
import {isInside, type RoomShape} from '../room/shape.ts';
import type {Vector} from '../survey/vectors.ts';
import {subSize} from './subPlaces.ts';

/** Names of spots along the walls: where across the room, where along it; 0 to 1. */
const named: Readonly<Record<string, readonly [across: number, along: number]>> = {
	'screen-left': [0, 0],
	'screen-middle': [0.5, 0],
	'screen-right': [1, 0],
	'left-middle': [0, 0.5],
	'right-middle': [1, 0.5],
	'back-left': [0, 1],
	'back-middle': [0.5, 1],
	'back-right': [1, 1],
};

export const spotNames: readonly string[] = Object.keys(named);

/** The named spot that is nearest to a place. */
export function nearestSpot([x, y]: Vector, {widthMetres, lengthMetres}: RoomShape): string {
	const off = ([across, along]: readonly [number, number]) =>
		Math.hypot(x - across * widthMetres, y - along * lengthMetres);
	return spotNames.reduce((best, name) => (off(named[name]!) < off(named[best]!) ? name : best));
}

/** A spot for a sub, under the words it was asked with. */
export type Spot = {readonly words: string; readonly at: Vector};

export type SpotsReading =
	| {readonly ok: true; readonly spots: readonly Spot[]}
	| {readonly ok: false; readonly why: string};

/** More spots than this in one question are a search. */
const mostSpots = 5;

/**
Reads spots such as `screen-left,back-right` or `0.4m/5.1m` (from the left wall, from the screen wall).

@param unit - Unit of bare numbers.
*/
export function readSpots(text: string, shape: RoomShape, unit: LengthUnit): SpotsReading {
	const words = text
		.split(',')
		.map(word => word.trim())
		.filter(Boolean);
	if (words.length < 1 || words.length > mostSpots)
		return {ok: false, why: `${words.length} spots, expected one to ${mostSpots}; --search looks at all.`};
	const off = subSize.halfMetres + 0.05;
	const spots: Spot[] = [];
	for (const word of words) {
		const place = Object.hasOwn(named, word) ? named[word] : undefined;
		const lengths = word.split('/').map(part => readLength(part, unit));
		const at = (share: number, size: number) => off + share * (size - 2 * off);
		let spot: Vector | undefined;
		if (place) spot = [at(place[0], shape.widthMetres), at(place[1], shape.lengthMetres), subSize.coneMetres];
		else if (lengths.length === 2 && lengths.every(one => one.kind === 'ok'))
			spot = [lengths[0]!.metres, lengths[1]!.metres, subSize.coneMetres];
		if (!spot)
			return {
				ok: false,
				why: `“${word}” is no spot. Expected one of ${spotNames.join(', ')}, or two lengths such as 0.4m/5.1m: from the left wall and from the screen wall.`,
			};
		if (!isInside(shape, spot)) return {ok: false, why: `“${word}” lies outside the walls.`};
		spots.push({words: word, at: spot});
	}

	return {ok: true, spots};
}
