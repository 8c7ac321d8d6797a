import {listed} from '../../profile/names.ts';
import type {LengthUnit, Profile} from '../../profile/types.ts';
import {lengthText} from '../survey/names.ts';
import type {NetworkResult} from '../survey/result.ts';
import {moveText, tapeTerms} from './correctionText.ts';
import type {PlanChange, PlanMove} from './planChange.ts';
import type {RoomTurn} from './roomTurn.ts';

const evidence: Readonly<Record<RoomTurn['by'], string>> = {
	ceiling: 'the ceiling’s low side has changed sides',
	walls: 'width and length have changed places',
	things: 'half a turn puts things back where they stood',
};

function turnText({turn, by}: RoomTurn): string {
	const wall = turn === 'half' ? 'the wall that was opposite it' : 'what was a side wall';
	const doubt = by === 'things' ? '' : ', or one of the two was entered the wrong way round';
	return `The room is turned round: ${evidence[by]}, so the screen is now on ${wall}${doubt}. Each plan has its own screen wall on top, and moves are told as seen facing the screen.`;
}

function untiedText(which: string, conventions: readonly string[]): string {
	return `The ${which} plan is not tied to the walls (${conventions.join('; ')}), so places cannot be compared. The distances under “Moved” can.`;
}

/** Less than this share of the whole way does not help to see where a thing went. */
const leastShare = 0.1;

/** Things that moved by the same way and length are told together. */
function movedLines(profile: Profile, result: Pick<NetworkResult, 'room'>, moved: PlanChange['moved']) {
	const groups = new Map<string, PlanMove[]>();
	for (const move of moved) {
		const by = move.by.map(part => (Math.abs(part) < leastShare * move.metres ? 0 : part));
		const way = moveText(profile, by as [number, number, number]);
		groups.set(way, [...(groups.get(way) ?? []), {...move, by: by as [number, number, number]}]);
	}

	return [...groups].map(([way, moves]) => {
		const names = listed(moves.map(({name}) => name));
		if (moves.length > 1) return `${names}: ${way} each.`;
		const {by, to, metres} = moves[0]!;
		const axes = [0, 1, 2].filter(axis => by[axis] !== 0);
		// Slantwise, the straight line says how far; along one axis the way itself does.
		const straight = axes.length > 1 ? `${lengthText(profile, metres)} in all, ` : '';
		return `${names}: ${straight}${way}; now ${tapeTerms(profile, result, to, axes).join(', ')}.`;
	});
}

/**
What differs between two floor plans, one sentence a thing, the farthest first.

@param profile - The newer one; its names are used, and its unit unless `lengthUnit` is another.
@param result - Its network.
*/
export function planChangeText(
	newer: Profile,
	result: Pick<NetworkResult, 'room'>,
	change: PlanChange,
	lengthUnit: LengthUnit | undefined = newer.lengthUnit,
): string[] {
	const {turn, conventions, moved, stayed, onlyOlder, onlyNewer} = change;
	const profile = {...newer, ...(lengthUnit && {lengthUnit})};
	const names = (list: readonly string[], what: string) =>
		list.length > 0 ? [`${what}: ${listed(list)}.`] : [];
	const isTied = conventions.older.length + conventions.newer.length === 0;
	return [
		...(turn ? [turnText(turn)] : []),
		...(conventions.older.length > 0 ? [untiedText('older', conventions.older)] : []),
		...(conventions.newer.length > 0 ? [untiedText('newer', conventions.newer)] : []),
		...movedLines(profile, result, moved),
		...(isTied && moved.length === 0 && stayed.length > 0
			? ['Nothing stands elsewhere, as far as the tape can tell.']
			: names(stayed, 'Stands where it stood')),
		...names(onlyNewer, 'Only in the newer plan'),
		...names(onlyOlder, 'Only in the older plan'),
	];
}
