import type {LengthUnit} from '../../profile/types.ts';
import type {ThingMove} from '../../study/arrangement/moves.ts';
import type {RoomShape} from '../../study/room/shape.ts';
import {wrap} from '../wrap.ts';
import {moveInTapeTerms} from './placeText.ts';

/** What to carry, in order, in tape terms; lines of at most `width` cells. */
export function moveLines(
	moves: readonly ThingMove[],
	shape: RoomShape,
	{name, unit}: {readonly name: (id: string) => string; readonly unit: LengthUnit},
	width: number,
	indent = '',
): string[] {
	return moves.flatMap((move, i) =>
		wrap(`${i + 1}. ${name(move.id)}: ${moveInTapeTerms(move, shape, unit)}.`, width, indent),
	);
}
