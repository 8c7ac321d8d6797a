import {nameOf} from '../../profile/names.ts';
import type {Profile} from '../../profile/types.ts';
import {lengthText} from '../survey/names.ts';
import type {NetworkResult} from '../survey/result.ts';
import type {Vector} from '../survey/vectors.ts';
import type {Correction} from './corrections.ts';

/** A part of a move smaller than this is left out of the words, metres. */
const worthSaying = 0.005;

const ways = [
	['to the left', 'to the right'],
	['towards the screen wall', 'towards the back wall'],
	['lower', 'higher'],
] as const;

/** A move in words, such as "11 cm to the left and 4 cm higher". */
export function moveText(profile: Profile, by: Vector): string {
	const steps = [0, 1, 2].flatMap(axis => {
		const metres = by[axis]!;
		return Math.abs(metres) < worthSaying
			? []
			: [`${lengthText(profile, Math.abs(metres))} ${ways[axis]![metres > 0 ? 1 : 0]}`];
	});
	return steps.length < 3 ? steps.join(' and ') : `${steps.slice(0, -1).join(', ')} and ${steps.at(-1)}`;
}

/** Where a place is, in tape terms: the nearer wall on each axis that matters, and the height. */
export function tapeTerms(
	profile: Profile,
	{room}: Pick<NetworkResult, 'room'>,
	to: Vector,
	axes: readonly number[],
): string[] {
	const {widthMetres, lengthMetres} = room;
	const wall = (axis: 0 | 1, size: number | undefined) => {
		const isFar = size !== undefined && to[axis] > size / 2;
		const name = axis === 0 ? (isFar ? 'wall:right' : 'wall:left') : isFar ? 'wall:back' : 'wall:front';
		return `${lengthText(profile, isFar ? size - to[axis] : to[axis])} from the ${nameOf(profile, name)}`;
	};
	return axes.map(axis =>
		axis === 0
			? wall(0, widthMetres)
			: axis === 1
				? wall(1, lengthMetres)
				: `${lengthText(profile, to[2])} above the floor`,
	);
}

/**
A correction in words that a person with a tape can act on: "Front left: slide it 11 cm to the left: 0.92 m from the
left wall, 2.87 m to the seat".
*/
export function correctionText(profile: Profile, result: NetworkResult, correction: Correction): string {
	const {id, by, to, toSeatMetres, moves} = correction;
	const axes = [0, 1, 2].filter(axis => Math.abs(by[axis]!) >= worthSaying);
	const isFree = result.conventions.length > 0;
	const places = isFree ? [] : tapeTerms(profile, result, to, axes);
	const verb = axes.length === 1 && axes[0] === 2 ? 'put it' : 'slide it';
	// Where the seat itself moves, the tape tells it from the speaker.
	const seat = `${lengthText(profile, toSeatMetres)} to ${moves === id ? 'the seat' : nameOf(profile, id)}`;
	return `${nameOf(profile, moves)}: ${verb} ${moveText(profile, by)}: ${[...places, seat].join(', ')}`;
}
