import type {NetworkResult} from '../survey/result.ts';
import type {Vector} from '../survey/vectors.ts';
import type {Correction} from './corrections.ts';

/** One part of a move: across the room to the right, along it away from the screen, or up; negative the other way. */
export type WayStep = {readonly axis: 'across' | 'along' | 'up'; readonly metres: number};

/** Where a place is in tape terms: so far from a wall or above the floor. */
export type TapeTerm = {
	readonly from: 'wall:left' | 'wall:right' | 'wall:front' | 'wall:back' | 'floor';
	readonly metres: number;
};

/** A move that a person with a tape can make. */
export type TapeMove = {
	/** Speaker or seat that is moved. */
	readonly moves: string;
	readonly steps: readonly WayStep[];
	/** Where it then stands, along the axes on which it moved; empty where the tape does not tie it to the walls. */
	readonly places: readonly TapeTerm[];
	/** The speaker or seat from which it is told how far away it then stands, and that distance, metres. */
	readonly from: string;
	readonly metres: number;
};

/** A part of a move smaller than this is not worth a word, metres. */
const worthSayingMetres = 0.005;

const axes = ['across', 'along', 'up'] as const;

/** The parts of a move that are worth a word. */
export function wayStepsOf(by: Vector): WayStep[] {
	return axes.flatMap((axis, index) =>
		Math.abs(by[index]!) < worthSayingMetres ? [] : [{axis, metres: by[index]!}],
	);
}

/** Where a place is, along the axes that matter: from the nearer wall, and above the floor. */
export function tapeTermsOf(
	{room}: Pick<NetworkResult, 'room'>,
	to: Vector,
	along: readonly WayStep['axis'][],
): TapeTerm[] {
	const nearer = (at: number, size: number | undefined, near: TapeTerm['from'], far: TapeTerm['from']) =>
		size !== undefined && at > size / 2 ? {from: far, metres: size - at} : {from: near, metres: at};
	return along.map(axis => {
		if (axis === 'across') return nearer(to[0], room.widthMetres, 'wall:left', 'wall:right');
		if (axis === 'along') return nearer(to[1], room.lengthMetres, 'wall:front', 'wall:back');
		return {from: 'floor', metres: to[2]};
	});
}

/**
A correction as a move to make by tape.

@param seat - Id of the reference seat.
*/
export function wayOf(result: NetworkResult, correction: Correction, seat: string): TapeMove {
	const {id, by, to, toSeatMetres, moves} = correction;
	const steps = wayStepsOf(by);
	const isFree = result.conventions.length > 0;
	return {
		moves,
		steps,
		places: isFree
			? []
			: tapeTermsOf(
					result,
					to,
					steps.map(({axis}) => axis),
				),
		// Where the seat itself moves, the tape tells it from the speaker.
		from: moves === id ? seat : id,
		metres: toSeatMetres,
	};
}

/** The ways to bring each speaker right, the smallest first, and speakers by their smallest. */
export function waysBySpeaker(
	result: NetworkResult,
	corrections: readonly Correction[],
	seat: string,
): TapeMove[][] {
	const bySize = corrections.toSorted((a, b) => a.sizeMetres - b.sizeMetres);
	const ids = [...new Set(bySize.map(({id}) => id))];
	return ids.map(id =>
		bySize.filter(correction => correction.id === id).map(correction => wayOf(result, correction, seat)),
	);
}
