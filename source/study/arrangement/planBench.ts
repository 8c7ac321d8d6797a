import {finished} from '../../science/numeric/finished.ts';
import {bassFrequenciesHertz} from '../room/bass.ts';
import {isInside} from '../room/shape.ts';
import type {Vector} from '../survey/vectors.ts';
import {keepingShapes, type RoomDraw, roomDraws} from './draws.ts';
import {type BassField, type Ears, earsIn, fieldAt, joinedFields} from './field.ts';
import {judgeLevels, levelsInDraws} from './judged.ts';
import type {FoundArrangement} from './search.ts';
import type {SearchSpace} from './searchSpace.ts';
import {plainSetting} from './subSetting.ts';
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
	/** The same in small steps: it yields every few milliseconds. */
	readonly judging: (variant: BenchVariant) => Generator<void, LiveArrangement>;
	/** What is outside the room, by its place in subs and then seats; none where all stands inside. */
	readonly outside: (variant: Variant) => readonly number[];
};

/** How many places a draw knows the shapes at: one thing on its way, all others where they stand. */
const mostKnown = 64;
/** Sources whose responses at the seats as they are stay known: while one sub moves, the others need no sums. */
const mostSources = 16;

/** Responses in every draw, kept for sources while the seats stay where they are. */
function fieldsKept(draws: readonly RoomDraw[], speedOfSound: number) {
	let heard: {key: string; ears: Ears[]; fields: Map<string, BassField[]>} | undefined;
	return function* ({subs, seats}: Variant): Generator<void, BassField[]> {
		const key = seats.join(' ');
		if (heard?.key !== key) {
			const places = seats.map((at, i) => ({at, number: 10_000 + i}));
			const ears: Ears[] = [];
			for (const [d, draw] of draws.entries()) {
				ears.push(earsIn(draw, places, speedOfSound));
				if (d % 5 === 4) yield;
			}

			heard = {key, ears, fields: new Map()};
		}

		const {ears, fields} = heard;
		const ofOne = (at: Vector, number: number): BassField[] => {
			const source = `${number} ${at.join(' ')}`;
			const known = fields.get(source);
			if (known) return known;
			if (fields.size >= mostSources) fields.clear();
			const found = draws.map((draw, d) => fieldAt(draw, [{at, number}], ears[d]!));
			fields.set(source, found);
			return found;
		};
		const parts: BassField[][] = [];
		for (const [number, at] of subs.entries()) {
			parts.push(ofOne(at, number));
			yield;
		}

		return draws.map((_, d) => joinedFields(parts.map(part => part[d]!)));
	};
}

/** Computes what all arrangements of a space have in common: modes, draws, shapes at places that were asked for. */
export function planBench({room}: Pick<SearchSpace, 'room'>): PlanBench {
	const draws = roomDraws(room, bassFrequenciesHertz).map(draw => keepingShapes(draw, mostKnown));
	const fieldsOf = fieldsKept(draws, room.speedOfSound);
	function* judging(variant: BenchVariant): Generator<void, LiveArrangement> {
		const {subs, seats, lifted, settings = subs.map(() => plainSetting), rowShiftMetres = 0} = variant;
		const levels = levelsInDraws(yield* fieldsOf(variant), settings);
		return {
			subs,
			rowShiftMetres,
			lifted,
			settings,
			judged: judgeLevels(bassFrequenciesHertz, levels),
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
		judge: variant => finished(judging(variant)),
	};
}
