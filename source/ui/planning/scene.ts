import type {PlanScene} from '../../report/plan.ts';
import {keepOuts} from '../../study/arrangement/keepOut.ts';
import type {Vector} from '../../study/survey/vectors.ts';
import type {Planning, PlanRow} from './planning.ts';

const place = ([x, y, z]: Vector) => ({x, y, z});
const isElsewhere = (a: Vector, b: Vector) => Math.hypot(a[0] - b[0], a[1] - b[1]) > 0.005;
/** What a sub is called in the drawing and the rows, by its place in the list. */
export const subLetter = (index: number): string => 'ABCDEFGH'[index] ?? String(index + 1);

/** The floor plan of a row: where things stand today hollow, where they are to stand solid, joined by a line. */
export function planScene(planning: Planning, {subs, seats}: PlanRow['places']): PlanScene {
	const {profile, space, speakers, now} = planning;
	const {shape} = space.room;
	const {room} = profile;
	const moved = (to: Vector, from: Vector | undefined) =>
		from && isElsewhere(to, from) ? {before: place(from), isPlanned: true} : {};
	return {
		room: {
			widthMetres: shape.widthMetres,
			lengthMetres: shape.lengthMetres,
			...(room.ceiling && {ceiling: room.ceiling}),
			...(room.missingCorner && {missingCorner: room.missingCorner}),
		},
		taken: keepOuts(room.features ?? [], shape),
		points: [
			...seats.map((at, i) => ({
				id: space.seats[i]!.id,
				label: i === 0 ? 'seat' : '',
				name: profile.seats.find(({id}) => id === space.seats[i]!.id)?.name ?? '',
				kind: 'seat' as const,
				...(i === 0 && {reference: true}),
				...place(at),
				...moved(at, now.places.seats[i]),
			})),
			...subs.map((at, i) => ({
				id: space.subs[i]?.id ?? `more ${i}`,
				label: `sub ${subLetter(i)}`,
				kind: 'sub' as const,
				...place(at),
				...(space.subs[i] ? moved(at, now.places.subs[i]) : {isPlanned: true}),
			})),
			...speakers.map(({id, at}) => ({id, label: id, kind: 'speaker' as const, ...place(at)})),
		],
	};
}
