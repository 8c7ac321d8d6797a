import {nameOf} from '../../profile/names.ts';
import {compareBass} from '../../study/arrangement/judged.ts';
import type {Variant} from '../../study/arrangement/variants.ts';
import type {Vector} from '../../study/survey/vectors.ts';
import type {Moving, Planning, PlanRow} from './planning.ts';
import {rowAtCursor} from './rows.ts';

/** Steps of an arrow key, metres. */
const stepsMetres = [0.02, 0.1, 0.5] as const;
/** All seats together. */
export const allSeats = 'seats';

/** What can be moved, in the order in which it is numbered. */
export function movableThings({profile, space}: Pick<Planning, 'profile' | 'space'>): Array<{
	readonly id: string;
	readonly name: string;
}> {
	const named = (id: string) => ({id, name: nameOf(profile, id)});
	return [
		...space.subs.filter(({isFixed}) => !isFixed).map(({id}) => named(id)),
		{id: allSeats, name: 'All seats'},
		...(space.seats.length > 1 ? space.seats.map(({id}) => named(id)) : []),
	];
}

/** The thing that a number or the beginning of a name means; undefined where it means none or several. */
export function thingMeant(planning: Planning, text: string): string | undefined {
	const things = movableThings(planning);
	const typed = text.trim().toLowerCase();
	const number = Number(typed);
	if (typed !== '' && Number.isInteger(number)) return things[number - 1]?.id;
	const exact = things.find(({id, name}) => id.toLowerCase() === typed || name.toLowerCase() === typed);
	const begun = things.filter(({name}) => name.toLowerCase().startsWith(typed));
	return exact?.id ?? (begun.length === 1 ? begun[0]!.id : undefined);
}

/** Takes a thing in hand, from where the chosen row has it. */
export function takeThing(planning: Planning, id: string): Planning {
	const {places, live, name} = rowAtCursor(planning);
	// Another wall and a sub that is not there yet are no places to move from.
	const isOther = name.kind === 'wall' || name.kind === 'oneMore';
	const from =
		planning.moving ??
		(isOther ? planning.now : {places, live: planning.bench.judge({...places, lifted: live.lifted})});
	return {
		...planning,
		typing: undefined,
		view: planning.view === 'curve' ? 'curve' : 'plan',
		notes: [],
		moving: {id, places: from.places, live: from.live, stepMetres: planning.moving?.stepMetres ?? 0.1},
	};
}

/** Moves the thing in hand by a step to the right and to the back; walls stop it. */
export function moveBy(planning: Planning, right: number, back: number): Planning {
	const {moving, space, bench} = planning;
	if (!moving) return planning;
	const {id, places, stepMetres} = moving;
	const shifted = ([x, y, z]: Vector): Vector => [
		Math.round((x + right * stepMetres) * 1000) / 1000,
		Math.round((y + back * stepMetres) * 1000) / 1000,
		z,
	];
	const next: Variant = {
		subs: places.subs.map((at, i) => (space.subs[i]?.id === id ? shifted(at) : at)),
		seats: places.seats.map((at, i) => (id === allSeats || space.seats[i]?.id === id ? shifted(at) : at)),
	};
	if (bench.outside(next).length > 0)
		return {
			...planning,
			notes: [{kind: 'note', text: 'A wall or the ceiling is there. − makes the steps smaller.'}],
		};
	const lifted = liftedIn(planning, next);
	return {...planning, notes: [], moving: {...moving, places: next, live: bench.judge({...next, lifted})}};
}

function liftedIn({now}: Planning, {subs, seats}: Variant): number {
	const isMoved = (to: readonly Vector[], from: readonly Vector[]) =>
		to.map((at, i) => at.some((value, axis) => Math.abs(value - from[i]![axis]!) > 0.005));
	return (
		isMoved(subs, now.places.subs).filter(Boolean).length +
		Number(isMoved(seats, now.places.seats).some(Boolean))
	);
}

/** Another size of step. */
export function stepSize(planning: Planning, by: -1 | 1): Planning {
	const {moving} = planning;
	if (!moving) return planning;
	const at = stepsMetres.indexOf(moving.stepMetres as (typeof stepsMetres)[number]);
	const stepMetres = stepsMetres[Math.max(0, Math.min(stepsMetres.length - 1, at + by))]!;
	return {...planning, moving: {...moving, stepMetres}};
}

/** Keeps what is in hand as a variant, a row of its own. */
export function keepVariant(planning: Planning): Planning {
	const {moving, kept, now, space, profile} = planning;
	if (!moving || moving.live.lifted === 0)
		return {...planning, moving: undefined, notes: [{kind: 'note', text: 'Nothing was moved.'}]};
	const {live, places, id} = moving;
	const name = id === allSeats ? 'seats' : nameOf(profile, id);
	const row: PlanRow = {
		name: {kind: 'asked', words: `${kept.length + 1}. by hand: ${name}`},
		arrangement: live,
		places,
		live,
		against: compareBass(now.arrangement.judged, live.judged, space.seats.length),
	};
	return {
		...planning,
		moving: undefined,
		order: 'lift',
		kept: [...kept, row],
		cursor: kept.length + 1,
		past: [...planning.past, {profile, kept}],
		notes: [{kind: 'note', text: 'Kept as a row. Enter chooses it, m goes on moving.'}],
	};
}

/** What the thing in hand is called. */
export function inHand({profile}: Planning, {id}: Moving): string {
	return id === allSeats ? 'All seats' : nameOf(profile, id);
}
