import {bassFrequenciesHertz} from '../room/bass.ts';
import {isInside} from '../room/shape.ts';
import {drawCount, drawnModes, keepingShapes, roomDraws} from './draws.ts';
import {type BassField, fieldOf, plainSetting, togetherDb} from './field.ts';
import {judgeBass} from './judged.ts';
import type {FoundArrangement} from './search.ts';
import type {SearchSpace} from './searchSpace.ts';
import type {Variant} from './variants.ts';

/** An arrangement judged live, with the levels at its seats as the model has them. */
export type LiveArrangement = FoundArrangement & {
	/** Level of all subs together by seat and frequency, dB, mean of the draws. */
	readonly seatsDb: ReadonlyArray<readonly number[]>;
};

/** What a bench judges; subs without settings where none are given. */
export type BenchVariant = Variant &
	Pick<FoundArrangement, 'lifted'> &
	Partial<Pick<FoundArrangement, 'settings' | 'rowShiftMetres'>>;

/** Judges one arrangement after the other in the same draws, quickly enough for an arrow key. */
export type PlanBench = {
	readonly frequenciesHertz: readonly number[];
	readonly judge: (variant: BenchVariant) => LiveArrangement;
	/** The same in small steps: it yields between draws. */
	readonly judging: (variant: BenchVariant) => Generator<void, LiveArrangement>;
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
	const {speedOfSound} = room;
	function* judging(variant: BenchVariant): Generator<void, LiveArrangement> {
		const {subs, seats, lifted, settings = subs.map(() => plainSetting), rowShiftMetres = 0} = variant;
		const fields: BassField[] = [];
		const playing = subs.map((at, number) => ({at, number}));
		const ears = seats.map((at, i) => ({at, number: 10_000 + i}));
		for (const draw of draws) {
			fields.push(fieldOf(draw, playing, ears, seats[0]!, speedOfSound));
			yield;
		}

		const every = [subs, seats].map(list => list.map((_, i) => i));
		const levels = fields.map(field => togetherDb(field, every[0]!, settings, every[1]!));
		return {
			subs,
			rowShiftMetres,
			lifted,
			settings,
			judged: judgeBass(fields, every[0]!, settings, every[1]!),
			seatsDb: seats.map((_, s) =>
				bassFrequenciesHertz.map(
					(__, f) => levels.reduce((sum, draw) => sum + draw[s]![f]!, 0) / levels.length,
				),
			),
		};
	}

	return {
		frequenciesHertz: bassFrequenciesHertz,
		outside: ({subs, seats}) => [...subs, ...seats].flatMap((at, i) => (isInside(room.shape, at) ? [] : [i])),
		judging,
		judge(variant) {
			const work = judging(variant);
			let next = work.next();
			while (!next.done) next = work.next();
			return next.value;
		},
	};
}
