import {listed} from '../../profile/names.ts';
import type {ComparedPlans} from '../../study/placement/comparePlans.ts';
import type {PlanMove} from '../../study/placement/planChange.ts';
import type {RoomTurn} from '../../study/placement/roomTurn.ts';
import type {ConventionFact} from '../../study/survey/facts.ts';
import {conventionText} from './conventions.ts';
import type {Say} from './say.ts';
import {placesText, stepsText} from './way.ts';

/** How the sentences about either of two profiles are said. */
export type SayBoth = {readonly older: Say; readonly newer: Say};

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

function untiedText(which: string, conventions: readonly ConventionFact[], say: Say): string {
	const texts = conventions.map(each => conventionText(each, say));
	return `The ${which} plan is not tied to the walls (${texts.join('; ')}), so places cannot be compared. “Distances that changed” can be.`;
}

/** Things that moved by the same way and length are told together. */
export function movedLines(moved: readonly PlanMove[], say: Say): string[] {
	const groups = new Map<string, PlanMove[]>();
	for (const move of moved) {
		const way = stepsText(move.steps, say);
		groups.set(way, [...(groups.get(way) ?? []), move]);
	}

	return [...groups].map(([way, moves]) => {
		const names = listed(moves.map(({name}) => name));
		if (moves.length > 1) return `${names}: ${way} each.`;
		const {metres, steps, places} = moves[0]!;
		// Slantwise, the straight line says how far; along one axis the way itself does.
		const straight = steps.length > 1 ? `${say.length(metres)} in all, ` : '';
		return `${names}: ${straight}${way}; now ${placesText(places, say)}.`;
	});
}

/**
What differs between two floor plans, one sentence a thing, the farthest first.

@param both - How either profile's sentences are said; what moved is called as in the newer one.
*/
export function planChangeLines(
	{change, sameRoom}: Pick<ComparedPlans, 'change' | 'sameRoom'>,
	{older, newer}: SayBoth,
): string[] {
	const {turn, conventions, moved, stayed, onlyOlder, onlyNewer} = change;
	const names = (list: readonly string[], what: string) =>
		list.length > 0 ? [`${what}: ${listed(list)}.`] : [];
	const isTied = conventions.older.length + conventions.newer.length === 0;
	return [
		...(sameRoom ? [] : ['The rooms differ: what “moved” stands elsewhere.']),
		...(turn ? [turnText(turn)] : []),
		...(conventions.older.length > 0 ? [untiedText('older', conventions.older, older)] : []),
		...(conventions.newer.length > 0 ? [untiedText('newer', conventions.newer, newer)] : []),
		...movedLines(moved, newer),
		...(isTied && moved.length === 0 && stayed.length > 0
			? ['Nothing stands elsewhere, as far as the tape can tell.']
			: names(stayed, 'Stands where it stood')),
		...names(onlyNewer, 'Only in the newer plan'),
		...names(onlyOlder, 'Only in the older plan'),
	];
}
