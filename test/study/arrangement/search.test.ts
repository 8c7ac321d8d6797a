import {expect, test} from 'vitest';
import {roomDraws} from '../../../source/study/arrangement/draws.ts';
import {addSource, emptySums, fieldOf, togetherDb} from '../../../source/study/arrangement/field.ts';
import {judgeBass} from '../../../source/study/arrangement/judged.ts';
import {keepOuts} from '../../../source/study/arrangement/keepOut.ts';
import {advisedRow, ladderRows} from '../../../source/study/arrangement/ladder.ts';
import {quickBass} from '../../../source/study/arrangement/quickBass.ts';
import {searchArrangements} from '../../../source/study/arrangement/search.ts';
import type {SearchSpace} from '../../../source/study/arrangement/searchSpace.ts';
import {subPlaces} from '../../../source/study/arrangement/subPlaces.ts';
import {plainSetting} from '../../../source/study/arrangement/subSetting.ts';
import {octaveFractionGrid} from '../../../source/study/room/frequencies.ts';
import type {Vector} from '../../../source/study/survey/vectors.ts';

const shape = {kind: 'box', widthMetres: 4.2, lengthMetres: 6.1, heightMetres: 2.5} as const;
const room = {shape, decay: {seconds: 0.4, from: 'estimated'}, speedOfSound: 343} as const;
const seats = [
	{id: 'middle', at: [2.3, 4.2, 1.1] as Vector},
	{id: 'left', at: [1.5, 4.2, 1.1] as Vector},
	{id: 'right', at: [3.1, 4.2, 1.1] as Vector},
];

function finish<Step, Result>(work: Generator<Step, Result>): {steps: Step[]; result: Result} {
	const steps: Step[] = [];
	for (;;) {
		const next = work.next();
		if (next.done) return {steps, result: next.value};
		steps.push(next.value);
	}
}

// Welti (AES convention paper 5602, 2002) as quoted: a sub at each wall's middle is the most even over seats, two at
// opposite middles come near, one in a corner is worst. Seats over the middle third of the room, as there.
test('layouts of subs rank as published: wall middles before two opposite middles before one corner', () => {
	const hall = {...room, shape: {...shape, widthMetres: 6.1, lengthMetres: 7.3}};
	const grid = [-1, 0, 1].flatMap(a =>
		[-1, 0, 1].map(b => ({at: [3.05 + a * 0.9, 3.65 + b * 0.9, 1.1] as Vector, number: 10 + 3 * a + b})),
	);
	const spread = (subs: readonly Vector[]) => {
		const frequencies = octaveFractionGrid(20, 80, 12);
		const fields = roomDraws(hall, frequencies, 6).map(draw =>
			fieldOf(
				draw,
				subs.map((at, number) => ({at, number})),
				[grid[4]!, ...grid.toSpliced(4, 1)],
				343,
			),
		);
		return judgeBass(
			fields,
			subs.map(() => plainSetting),
		).meanDb;
	};
	const middles: Vector[] = [
		[3.05, 0.1, 0.2],
		[3.05, 7.2, 0.2],
		[0.1, 3.65, 0.2],
		[6, 3.65, 0.2],
	];
	const four = spread(middles);
	const two = spread(middles.slice(0, 2));
	const one = spread([[0.2, 0.2, 0.2]]);
	expect(four).toBeLessThan(two + 0.3);
	expect(two).toBeLessThan(one - 1);
});

test('the quick measure is the full one without settings', () => {
	const draw = roomDraws(room, octaveFractionGrid(20, 120, 6), 1)[0]!;
	const subs = [
		{at: [0.3, 0.3, 0.2] as Vector, number: 0},
		{at: [3.9, 5.8, 0.2] as Vector, number: 1},
	];
	const field = fieldOf(
		draw,
		subs,
		seats.map((seat, i) => ({at: seat.at, number: 5 + i})),
		343,
	);
	const full = judgeBass([field], [plainSetting, plainSetting]).meanDb;
	// Rounding, and the floor that keeps a logarithm from a silent sum.
	const sums = emptySums(field);
	for (const source of [0, 1]) addSource(sums, field, source);
	expect(quickBass(sums, 3).spreadDb).toBeCloseTo(full, 6);
	expect(togetherDb(field, []).flat().every(Number.isFinite)).toBe(true);
});

test('places stand inside, off what is marked and away from the seats', () => {
	const door = {on: 'wall:left', kind: 'door', fromMetres: 2, toMetres: 2.9} as const;
	const places = subPlaces(
		shape,
		seats.map(({at}) => at),
		keepOuts([door], shape),
		0.5,
	);
	expect(places.length).toBeGreaterThan(20);
	for (const {
		at: [x, y],
	} of places) {
		expect(x < 0.9 + 0.2 && y > 1.8 && y < 3.1).toBe(false);
		expect(seats.every(seat => Math.hypot(seat.at[0] - x, seat.at[1] - y) >= 0.6)).toBe(true);
	}

	expect(places.filter(({isCorner}) => isCorner).length).toBe(4);
});

test('a search climbs from nothing lifted to more, never gets worse, and tells how far it is', () => {
	const space: SearchSpace = {
		room,
		seats,
		subs: [
			{id: 'sub1', at: [0.3, 0.3, 0.2], isFixed: false},
			{id: 'sub2', at: [0.9, 0.3, 0.2], isFixed: false},
		],
		places: subPlaces(
			shape,
			seats.map(({at}) => at),
			[],
			1,
		),
		rowShiftsMetres: [-0.3, 0, 0.3],
		steps: {delayStepMs: 0.1, mostDelayMs: 100, gainStepDb: 0.5, leastGainDb: -20, canInvert: true},
	};
	const {steps, result} = finish(searchArrangements(space));
	expect(result.map(({lifted}) => lifted)).toEqual([0, 1, 2, 3]);
	expect(result[0]!.subs).toEqual([
		[0.3, 0.3, 0.2],
		[0.9, 0.3, 0.2],
	]);
	expect(steps.at(-1)!.done).toBe(steps.at(-1)!.of);
	const rows = ladderRows(space, result[0]!, result);
	const advised = advisedRow(result[0]!, rows, seats.length)!;
	// Two subs side by side in a corner leave seats far apart: moving one is sure to help.
	expect(rows[advised]!.arrangement.lifted).toBeGreaterThan(0);
	expect(rows[advised]!.against!.certainty).toBe('sure');
	expect(finish(searchArrangements(space)).result).toEqual(result);
});

test('a sub that cannot be moved stays', () => {
	const {result} = finish(
		searchArrangements({
			room,
			seats,
			subs: [{id: 'sub1', at: [0.3, 0.3, 0.2], isFixed: true}],
			places: subPlaces(shape, [], [], 1.5),
			rowShiftsMetres: [0],
			steps: undefined,
		}),
	);
	expect(result.map(({lifted}) => lifted)).toEqual([0]);
});
