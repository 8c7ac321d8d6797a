import {significance} from '../../science/numeric/uncertain.ts';
import type {NetworkResult, PlacedPoint} from '../survey/result.ts';
import type {Vector} from '../survey/vectors.ts';
import {isKnown} from './angles.ts';
import {type RoomTurn, roomTurn} from './roomTurn.ts';
import {type TapeTerm, tapeTermsOf, type WayStep, wayStepsOf} from './way.ts';

/** One thing that stands elsewhere than before, as seen facing the screen. Lengths in metres. */
export type PlanMove = {
	/** As the newer profile calls it. */
	readonly id: string;
	readonly name: string;
	readonly from: Vector;
	readonly to: Vector;
	/** Along x, y and z; 0 along an axis on which the readings leave it open whether anything changed. */
	readonly by: Vector;
	/** Length of `by`. */
	readonly metres: number;
	/** The parts of it that help to see where it went, and where it stands along them. */
	readonly steps: readonly WayStep[];
	readonly places: readonly TapeTerm[];
};

/** What differs between the floor plans of two profiles. */
export type PlanChange = {
	readonly turn?: RoomTurn;
	/** What is taken for granted where no reading ties a plan to the walls; places are not compared then. */
	readonly conventions: {
		readonly older: NetworkResult['conventions'];
		readonly newer: NetworkResult['conventions'];
	};
	/** Farthest first. */
	readonly moved: readonly PlanMove[];
	/** Names of what stands where it stood, as far as the readings can tell. */
	readonly stayed: readonly string[];
	/** Names of what has a known place in one plan alone. */
	readonly onlyOlder: readonly string[];
	readonly onlyNewer: readonly string[];
};

/** What is known of two profiles before their places are compared. */
export type Compared = {
	readonly matches: ReadonlyArray<{readonly older: string; readonly newer: string}>;
	readonly sameRoom: boolean;
};

type PlacedNetwork = Pick<NetworkResult, 'points' | 'room' | 'conventions'>;

/** Less than this is not worth a word: the tape's end is not held to the same spot of a thing each year. */
const leastMetres = 0.01;
/** Less than this share of the whole way does not help to see where a thing went. */
const leastShare = 0.1;

function moveOf(before: PlacedPoint, after: PlacedPoint, newer: PlacedNetwork): PlanMove {
	const along = (axis: 0 | 1 | 2) => {
		const change = after.at[axis] - before.at[axis];
		const sigma = Math.hypot(before.sigmaMetres[axis], after.sigmaMetres[axis]);
		return Math.abs(change) > Math.max(leastMetres, significance * sigma) ? change : 0;
	};
	const by: Vector = [along(0), along(1), along(2)];
	const metres = Math.hypot(...by);
	const telling = by.map(part => (Math.abs(part) < leastShare * metres ? 0 : part));
	const steps = wayStepsOf(telling as unknown as Vector);
	return {
		id: after.id,
		name: after.label,
		from: before.at,
		to: after.at,
		by,
		metres,
		steps,
		places: tapeTermsOf(
			newer,
			after.at,
			steps.map(({axis}) => axis),
		),
	};
}

/**
What stands elsewhere in the newer plan, and how far.

@param compared - Things that carry another id in the newer profile, and whether both are of one room: only then can
it have been turned round.
@returns Moves along an axis only where the change is above three times its standard uncertainty and above 1 cm.
*/
export function planChange(
	older: PlacedNetwork,
	newer: PlacedNetwork,
	{matches, sameRoom}: Compared = {matches: [], sameRoom: true},
): PlanChange {
	const renamed = new Map(matches.map(match => [match.older, match.newer]));
	const before = new Map(
		older.points.filter(isKnown).map(point => [renamed.get(point.id) ?? point.id, point] as const),
	);
	const after = newer.points.filter(isKnown);
	const both = after.flatMap(point => {
		const was = before.get(point.id);
		return was ? [{was, is: point}] : [];
	});
	const conventions = {older: older.conventions, newer: newer.conventions};
	const isTied = older.conventions.length + newer.conventions.length === 0;
	const moves = isTied ? both.map(({was, is}) => moveOf(was, is, newer)) : [];
	const turn =
		isTied && sameRoom
			? roomTurn(
					older.room,
					newer.room,
					both.map(({was, is}) => [was.at, is.at] as const),
				)
			: undefined;
	const known = new Set(after.map(({id}) => id));
	return {
		...(turn && {turn}),
		conventions,
		moved: moves.filter(({metres}) => metres > 0).sort((a, b) => b.metres - a.metres),
		stayed: moves.filter(({metres}) => metres === 0).map(({name}) => name),
		onlyOlder: [...before].filter(([id]) => !known.has(id)).map(([, {label}]) => label),
		onlyNewer: after.filter(({id}) => !before.has(id)).map(({label}) => label),
	};
}
