import {bassFrequenciesHertz} from '../room/bass.ts';
import {octaveFractionGrid} from '../room/frequencies.ts';
import type {Placed, RoomInputs} from '../room/roomStudy.ts';
import {isInside} from '../room/shape.ts';
import type {Vector} from '../survey/vectors.ts';
import {drawCount, type RoomDraw, roomDraws} from './draws.ts';
import type {SubSetting} from './field.ts';
import {type BassField, fieldOf, type Numbered, quickBass} from './field.ts';
import type {JudgedBass} from './judged.ts';
import type {SubPlace} from './subPlaces.ts';
import {bestSubSettings, type SettingSteps} from './subSettings.ts';

/** What a search may change. */
export type SearchSpace = {
	readonly room: Pick<RoomInputs, 'shape' | 'decay' | 'speedOfSound'>;
	/** Ears as they are, the reference seat first. */
	readonly seats: readonly Placed[];
	readonly subs: ReadonlyArray<Placed & {readonly isFixed: boolean}>;
	readonly places: readonly SubPlace[];
	/** How far all seats together may be moved towards the back, metres; 0 is one of them. */
	readonly rowShiftsMetres: readonly number[];
	readonly steps: SettingSteps | undefined;
};

/** One arrangement that was judged. */
export type FoundArrangement = {
	/** Where each sub of the space stands, in its order. */
	readonly subs: readonly Vector[];
	readonly rowShiftMetres: number;
	/** What was lifted: subs that moved, plus one for the seats. */
	readonly lifted: number;
	readonly settings: readonly SubSetting[];
	readonly judged: JudgedBass;
};

export type SearchStep = {
	readonly done: number;
	readonly of: number;
	readonly best: readonly FoundArrangement[];
};

type Sketch = {
	readonly picked: readonly number[];
	readonly row: number;
	readonly lifted: number;
	readonly quickDb: number;
};

/** How many sketches of each number of lifted things are judged in full. */
const judgedInFull = 12;
/** How many of these are given the best settings of their subs before one is chosen. */
const givenSettings = 3;
/** The first look: fewer draws and wider steps of frequency. */
const firstLook = {draws: 4, perOctave: 6} as const;
/** Work between two answers, in sums of one arrangement: some milliseconds. */
const chunk = 400;

/** Everything that can be a source, numbered: the subs as they stand, then the places. */
function sourcesIn({subs, places}: SearchSpace): Numbered[] {
	return [...subs.map(({at}) => at), ...places.map(({at}) => at)].map((at, number) => ({at, number}));
}

/**
Every set of places for the subs: each either stays where it is or goes to a place, none to the same one. Above two subs
that move the number grows too large: then pairs of them move, the others stay.
*/
function* choices({subs, places}: SearchSpace): Generator<readonly number[]> {
	const stay = subs.map((_, i) => i);
	yield stay;
	const free = subs.flatMap(({isFixed}, i) => (isFixed ? [] : [i]));
	for (const i of free)
		for (let p = 0; p < places.length; p++) yield stay.map((one, s) => (s === i ? subs.length + p : one));
	for (const [a, i] of free.entries()) {
		for (const j of free.slice(a + 1)) {
			for (let p = 0; p < places.length; p++) {
				for (let q = 0; q < places.length; q++) {
					// Subs that are alike may be exchanged: which of them goes where is decided by the way it is carried.
					if (q > p)
						yield stay.map((one, s) => (s === i ? subs.length + p : s === j ? subs.length + q : one));
				}
			}
		}
	}
}

/**
Searches the places of subs and seats. A first look sums every choice in a few draws; the best of each number of lifted
things are then judged in all draws with their best settings.

A generator: it yields how far it is and the best so far; who stops asking stops it.

@returns For each number of lifted things, from nothing up, the best arrangement found, in that order.
*/
export function* searchArrangements(space: SearchSpace): Generator<SearchStep, readonly FoundArrangement[]> {
	const {room, seats, subs, rowShiftsMetres} = space;
	const sources = sourcesIn(space);
	const rows = rowShiftsMetres.filter(shift =>
		seats.every(({at: [x, y, z]}) => isInside(room.shape, [x, y + shift, z])),
	);
	const all = [...choices(space)];
	const work = all.length * rows.length;
	let done = 0;
	const sketches: Sketch[] = [];
	const looks = roomDraws(room, octaveFractionGrid(20, 120, firstLook.perOctave), firstLook.draws);
	for (const [row, shift] of rows.entries()) {
		const ears = seats.map(({at: [x, y, z]}, i) => ({at: [x, y + shift, z] as Vector, number: 10_000 + i}));
		const fields: BassField[] = [];
		for (const draw of looks) {
			fields.push(fieldOf(draw, sources, ears, ears[0]!.at, room.speedOfSound));
			yield {done, of: work, best: []};
		}

		const receivers = ears.map((_, i) => i);
		for (const picked of all) {
			const moved = picked.filter((source, i) => source !== i).length;
			const quickDb =
				fields.reduce((sum, field) => sum + quickBass(field, picked, receivers).spreadDb, 0) / fields.length;
			sketches.push({picked, row, lifted: moved + Number(shift !== 0), quickDb});
			done++;
			if (done % chunk === 0) yield {done, of: work, best: []};
		}
	}

	const draws = roomDraws(room, bassFrequenciesHertz, drawCount);
	const found: FoundArrangement[] = [];
	const most = subs.filter(({isFixed}) => !isFixed).length + 1;
	for (let lifted = 0; lifted <= Math.min(3, most); lifted++) {
		const best = sketches
			.filter(sketch => sketch.lifted === lifted)
			.sort((a, b) => a.quickDb - b.quickDb)
			.slice(0, judgedInFull);
		const plain: Array<{readonly sketch: Sketch; readonly meanDb: number}> = [];
		for (const sketch of best) {
			const {meanDb} = judgeInFull({...space, steps: undefined}, draws, sources, sketch, rows).judged;
			plain.push({sketch, meanDb});
			yield {done, of: work, best: found};
		}

		let winner: FoundArrangement | undefined;
		for (const {sketch} of plain.sort((a, b) => a.meanDb - b.meanDb).slice(0, givenSettings)) {
			const one = judgeInFull(space, draws, sources, sketch, rows);
			if (!winner || one.judged.meanDb < winner.judged.meanDb) winner = one;
			yield {done, of: work, best: [...found, winner]};
		}

		if (winner) found.push(winner);
	}

	return found;
}

/** One arrangement in all draws, with the best settings of its subs. */
function judgeInFull(
	{room, seats, steps}: Pick<SearchSpace, 'room' | 'seats' | 'steps'>,
	draws: readonly RoomDraw[],
	sources: readonly Numbered[],
	{picked, row, lifted}: Omit<Sketch, 'quickDb'>,
	rows: readonly number[],
): FoundArrangement {
	const rowShiftMetres = rows[row]!;
	const ears = seats.map(({at: [x, y, z]}, i) => ({
		at: [x, y + rowShiftMetres, z] as Vector,
		number: 10_000 + i,
	}));
	const playing = picked.map(source => sources[source]!);
	const fields = draws.map(draw => fieldOf(draw, playing, ears, ears[0]!.at, room.speedOfSound));
	const everyOne = playing.map((_, i) => i);
	const {settings, judged} = bestSubSettings(
		fields,
		everyOne,
		ears.map((_, i) => i),
		steps,
	);
	return {subs: playing.map(({at}) => at), rowShiftMetres, lifted, settings, judged};
}
