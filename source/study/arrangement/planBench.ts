import {bassFrequenciesHertz} from '../room/bass.ts';
import {isInside} from '../room/shape.ts';
import {drawCount, drawnModes, keepingShapes, roomDraws} from './draws.ts';
import {fieldOf, plainSetting, togetherDb} from './field.ts';
import {judgeBass} from './judged.ts';
import type {FoundArrangement} from './search.ts';
import type {SearchSpace} from './searchSpace.ts';
import type {Variant} from './variants.ts';

/** An arrangement judged live, with the levels at its seats as the model has them. */
export type LiveArrangement = FoundArrangement & {
	/** Level of all subs together by seat and frequency, dB, mean of the draws. */
	readonly seatsDb: ReadonlyArray<readonly number[]>;
};

/** Judges one arrangement after the other in the same draws, without settings, quickly enough for an arrow key. */
export type PlanBench = {
	readonly frequenciesHertz: readonly number[];
	readonly judge: (variant: Variant & {readonly lifted: number}) => LiveArrangement;
	/** What is outside the room, by its place in subs and then seats; none where all stands inside. */
	readonly outside: (variant: Variant) => readonly number[];
};

/** How many places a draw knows the shapes at: one thing on its way, all others where they stand. */
const mostKnown = 64;

/** Computes what all arrangements of a space have in common: modes, draws, shapes at places that were asked for. */
export function planBench({room}: Pick<SearchSpace, 'room'>): PlanBench {
	const draws = roomDraws(room, bassFrequenciesHertz, drawCount, drawnModes(room)).map(draw =>
		keepingShapes(draw, mostKnown),
	);
	return {
		frequenciesHertz: bassFrequenciesHertz,
		outside: ({subs, seats}) => [...subs, ...seats].flatMap((at, i) => (isInside(room.shape, at) ? [] : [i])),
		judge({subs, seats, lifted}) {
			const fields = draws.map(draw =>
				fieldOf(
					draw,
					subs.map((at, number) => ({at, number})),
					seats.map((at, i) => ({at, number: 10_000 + i})),
					seats[0]!,
					room.speedOfSound,
				),
			);
			const settings = subs.map(() => plainSetting);
			const every = [subs, seats].map(list => list.map((_, i) => i));
			const levels = fields.map(field => togetherDb(field, every[0]!, settings, every[1]!));
			return {
				subs,
				rowShiftMetres: 0,
				lifted,
				settings,
				judged: judgeBass(fields, every[0]!, settings, every[1]!),
				seatsDb: seats.map((_, s) =>
					bassFrequenciesHertz.map(
						(__, f) => levels.reduce((sum, draw) => sum + draw[s]![f]!, 0) / levels.length,
					),
				),
			};
		},
	};
}
