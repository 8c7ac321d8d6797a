import {finished} from '../../science/numeric/finished.ts';
import {bassFrequenciesHertz} from '../room/bass.ts';
import type {Vector} from '../survey/vectors.ts';
import {roomDraws} from './draws.ts';
import {fieldOf} from './field.ts';
import type {FoundArrangement} from './search.ts';
import type {SearchSpace} from './searchSpace.ts';
import {bestSubSettings} from './subSettings.ts';

/** Where subs and ears stand in one variant. */
export type Variant = {readonly subs: readonly Vector[]; readonly seats: readonly Vector[]};

/**
Judges variants of one room in the same draws, so that they differ by themselves alone.

@param lifted - Number of things each variant lifts, for the list of the results.
*/
export function judgeVariants(
	{room, steps}: Pick<SearchSpace, 'room' | 'steps'>,
	variants: ReadonlyArray<Variant & {readonly lifted: number}>,
): FoundArrangement[] {
	const draws = roomDraws(room, bassFrequenciesHertz);
	return variants.map(({subs, seats, lifted}) => {
		const ears = seats.map((at, i) => ({at, number: 10_000 + i}));
		// A sub keeps its errors of one draw wherever it goes.
		const playing = subs.map((at, number) => ({at, number}));
		const fields = draws.map(draw => fieldOf(draw, playing, ears, room.speedOfSound));
		const found = finished(bestSubSettings(fields, steps));
		return {subs, rowShiftMetres: 0, lifted, ...found};
	});
}
