import {bassFrequenciesHertz} from '../room/bass.ts';
import {isInside} from '../room/shape.ts';
import type {Vector} from '../survey/vectors.ts';
import {drawnModes, keepingShapes, roomDrawsInSteps} from './draws.ts';
import type {BassField, Numbered} from './field.ts';
import {firstLook, type Sketch} from './firstLook.ts';
import type {JudgedBass} from './judged.ts';
import {rowFields} from './rowFields.ts';
import type {SearchSpace} from './searchSpace.ts';
import type {SubSetting} from './subSetting.ts';
import {bestSubSettings, plainSpreadDb} from './subSettings.ts';

/** One arrangement that was judged. */
export type FoundArrangement = {
	/** Where each sub of the space stands, in its order. */
	readonly subs: readonly Vector[];
	readonly rowShiftMetres: number;
	/** What was lifted: subs that moved, plus one for the seats. */
	readonly lifted: number;
	readonly settings: readonly SubSetting[];
	readonly judged: JudgedBass;
	/** Level of all subs together by seat and frequency, dB, mean of the draws; where it was judged for its curve. */
	readonly seatsDb?: ReadonlyArray<readonly number[]>;
};

export type SearchStep = {
	readonly done: number;
	readonly of: number;
	readonly best: readonly FoundArrangement[];
};

/** How many sketches of each number of lifted things are judged in all draws. */
const judgedInFull = 6;
/** How many of these are given the best settings of their subs before one is chosen. */
const givenSettings = 3;

/** Shapes that a draw keeps: every place, and the ears of every row. */
const mostShapes = 1000;

/** Everything that can be a source, numbered: the subs as they stand, then the places. */
function sourcesIn({subs, places}: SearchSpace): Numbered[] {
	return [...subs.map(({at}) => at), ...places.map(({at}) => at)].map((at, number) => ({at, number}));
}

/**
Searches the places of subs and seats. A first look sums every choice in a few draws; the best of each number of lifted
things are then judged in all draws with their best settings.

A generator: it yields how far it is and the best so far, every few milliseconds; who stops asking stops it.

@returns For each number of lifted things, from nothing up, the best arrangement found, in that order.
*/
export function* searchArrangements(space: SearchSpace): Generator<SearchStep, readonly FoundArrangement[]> {
	const {room, seats, subs, rowShiftsMetres} = space;
	const sources = sourcesIn(space);
	const rows = rowShiftsMetres.filter(shift =>
		seats.every(({at: [x, y, z]}) => isInside(room.shape, [x, y + shift, z])),
	);
	let step: SearchStep = {done: 0, of: 1, best: []};
	const modes = yield* telling(drawnModes(room), () => step);
	const sketches = yield* telling(firstLook(space, {modes, sources, rows, most: judgedInFull}), looked => {
		step = {...looked, best: []};
		return step;
	});
	const draws = yield* telling(roomDrawsInSteps(room, bassFrequenciesHertz, modes), () => step);
	const fieldsOf = yield* telling(
		rowFields(
			{
				draws: draws.map(draw => keepingShapes(draw, mostShapes)),
				sources,
				seats,
				rows,
				speedOfSound: room.speedOfSound,
			},
			[...sketches.values()].flat(),
		),
		() => step,
	);
	const found: FoundArrangement[] = [];
	const most = Math.min(3, subs.filter(({isFixed}) => !isFixed).length + 1);
	for (let lifted = 0; lifted <= most; lifted++) {
		const plain: Array<{
			readonly sketch: Sketch;
			readonly fields: readonly BassField[];
			readonly meanDb: number;
		}> = [];
		for (const sketch of sketches.get(lifted) ?? []) {
			const fields = fieldsOf(sketch);
			plain.push({sketch, fields, meanDb: plainSpreadDb(fields)});
			yield step;
		}

		let winner: FoundArrangement | undefined;
		for (const {sketch, fields} of plain.sort((a, b) => a.meanDb - b.meanDb).slice(0, givenSettings)) {
			const one: FoundArrangement = {
				subs: sketch.picked.map(source => sources[source]!.at),
				rowShiftMetres: rows[sketch.row]!,
				lifted,
				...(yield* telling(bestSubSettings(fields, space.steps), () => step)),
			};
			if (!winner || one.judged.meanDb < winner.judged.meanDb) winner = one;
			step = {...step, best: [...found, winner]};
		}

		if (winner) found.push(winner);
		yield step;
	}

	return found;
}

/** Runs work that tells something else, or nothing; between its steps `told` is yielded. */
function* telling<Step, Result>(
	work: Generator<Step, Result>,
	told: (step: Step) => SearchStep,
): Generator<SearchStep, Result> {
	for (;;) {
		const next = work.next();
		if (next.done) return next.value;
		yield told(next.value);
	}
}
