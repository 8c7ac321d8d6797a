import type {LengthUnit} from '../../profile/types.ts';
import {formatLength} from '../../profile/units/length.ts';
import type {RowContents} from '../../study/arrangement/row.ts';
import type {Say} from '../said/say.ts';

/** Named spots along the walls in words. */
const spotWords: Readonly<Record<string, string>> = {
	'screen-left': 'front left',
	'screen-middle': 'front middle',
	'screen-right': 'front right',
	'left-middle': 'left wall',
	'right-middle': 'right wall',
	'back-left': 'back left',
	'back-middle': 'back middle',
	'back-right': 'back right',
};
const wallWords = {'wall:left': 'left wall', 'wall:right': 'right wall', 'wall:back': 'back wall'} as const;
const counts = ['nothing', 'one', 'two', 'three', 'four', 'five'];

/** The name of a row of the ladder, such as "one: Subwoofer → back left". */
export function ladderRowName({name, moves, spots}: RowContents, say: Say, unit: LengthUnit): string {
	if (name.kind === 'now') return 'as it stands';
	if (name.kind === 'asked') return name.words;
	if (name.kind === 'oneMore') return `one more sub, ${spotWords[spots[0] ?? ''] ?? 'anywhere'}`;
	if (name.kind === 'wall') return `the screen on the ${wallWords[name.wall]}`;
	if (name.lifted === 0) return 'nothing: delay and gain only';
	const subs = moves.flatMap((move, i) =>
		move.kind === 'sub' ? [`${say.name(move.id)} → ${spotWords[spots[i]!] ?? 'there'}`] : [],
	);
	const shift = name.rowShiftMetres;
	const seats =
		shift === 0
			? []
			: [
					`seats ${formatLength(Math.abs(shift), unit, {stepMetres: 0.01})} ${shift > 0 ? 'back' : 'forward'}`,
				];
	return `${counts[name.lifted] ?? name.lifted}: ${[...subs, ...seats].join(', ')}`;
}
