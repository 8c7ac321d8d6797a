import {expect, test} from 'vitest';
import {decayOf} from '../../../source/study/room/decayOf.ts';
import {roomInputs} from '../../../source/study/room/roomInputs.ts';
import {type RoomInputs, studyRoom} from '../../../source/study/room/roomStudy.ts';
import {seatRow} from '../../../source/study/room/seatRow.ts';
import {shapeOf} from '../../../source/study/room/shapeOf.ts';

const shape = {kind: 'box', widthMetres: 4, lengthMetres: 6, heightMetres: 2.5} as const;
const inputs: RoomInputs = {
	shape,
	isNearest: false,
	decay: {seconds: 0.4, from: 'stated'},
	speedOfSound: 343,
	seats: [
		{id: 'middle', at: [2, 4, 1.1]},
		{id: 'left', at: [1.2, 4, 1.1]},
	],
	subs: [{id: 'sub1', at: [0.3, 0.3, 0.2]}],
	speakers: [{id: 'FL', at: [1, 0.5, 1]}],
};

test('a seat in the middle of the width hears nothing of the waves with an odd number of half waves across', () => {
	const {modes} = studyRoom(inputs);
	const across = modes.find(({order}) => order.join() === '1,0,0')!;
	expect(across.frequencyHertz).toBeCloseTo(343 / 8, 9);
	expect(across.seatsDb[0]).toBeLessThan(-60);
	// cos(π·1.2/4) of the wave's greatest pressure: closed form.
	expect(across.seatsDb[1]).toBeCloseTo(20 * Math.log10(Math.cos((Math.PI * 1.2) / 4)), 6);
});

test('a seat in a strong wave’s hole is told so, with its frequency', () => {
	const found = studyRoom(inputs).findings.find(({code}) => code === 'seat-in-null');
	expect(found?.about).toEqual(['middle']);
	expect(found?.facts).toMatchObject({frequencyHertz: 343 / 8});
});

test('a place outside the walls is a problem and is left out', () => {
	const study = studyRoom({...inputs, subs: [{id: 'sub1', at: [4.4, 1, 0.2]}]});
	expect(study.findings).toContainEqual({
		kind: 'problem',
		code: 'room-place-outside',
		about: ['sub1'],
		facts: {},
	});
	expect(study.together).toBeUndefined();
	expect(study.responses.map(({source}) => source)).not.toContain('sub1');
});

test.each([
	['nothing wide', {...shape, widthMetres: 0}, 'width'],
	['a kilometre long', {...shape, lengthMetres: 1000}, 'length'],
	['without height', {...shape, heightMetres: Number.NaN}, 'height'],
	[
		'whose missing corner is larger than it',
		{...shape, kind: 'corner', missing: {corner: 'backLeft', widthMetres: 5, lengthMetres: 1}} as const,
		'missingWidth',
	],
	[
		'whose ceiling places fall back',
		{
			kind: 'ceiling',
			widthMetres: 4,
			lengthMetres: 6,
			across: 0,
			places: [
				{atMetres: 0, heightMetres: 2},
				{atMetres: 3, heightMetres: 3},
				{atMetres: 2, heightMetres: 2},
				{atMetres: 4, heightMetres: 2},
			],
		} as const,
		'places',
	],
])('a room %s is refused by name, and nothing is computed', (_, wrong, size) => {
	const study = studyRoom({...inputs, shape: wrong});
	expect(study.findings[0]).toMatchObject({kind: 'problem', code: 'room-size-impossible', facts: {size}});
	expect(study.modes).toEqual([]);
});

test('the row of seats shows the wave across: loud at both walls, a hole in the middle', () => {
	const row = seatRow({...inputs, decay: {seconds: 1, from: 'stated'}}, 41);
	const f = row.frequenciesHertz.findIndex(hertz => hertz > 42);
	const levels = row.levelsDb[f]!;
	expect(levels[0]).toBeGreaterThan(levels[20]! + 6);
	expect(levels[40]).toBeGreaterThan(levels[20]! + 6);
});

test('what is not known of the size is named; what the profile states comes before the tape', () => {
	expect(shapeOf({name: 'Den'}, {widthMetres: 4})).toEqual({missing: ['length', 'height']});
	const known = shapeOf(
		{name: 'Den', widthMetres: 4.1, ceiling: {kind: 'flat', heightMetres: 2.4}},
		{widthMetres: 4, lengthMetres: 5},
	);
	expect(known.shape).toEqual({kind: 'box', widthMetres: 4.1, lengthMetres: 5, heightMetres: 2.4});
	const inputsOfNothing = roomInputs(
		{room: {name: 'Den'}, seats: [{id: 's', name: 'Sofa'}]},
		{room: {}, points: []},
		343,
	);
	expect(inputsOfNothing).toEqual({missing: ['width', 'length', 'height']});
});

test('a recorded decay comes before a stated one, a stated one before a guess that says so', () => {
	expect(decayOf(shape, {recordedSeconds: 0.3, statedSeconds: 0.5}, 343)).toEqual({
		seconds: 0.3,
		from: 'recorded',
	});
	expect(decayOf(shape, {statedSeconds: 0.5}, 343)).toEqual({seconds: 0.5, from: 'stated'});
	const guessed = decayOf(shape, {}, 343);
	expect(guessed.from).toBe('estimated');
	// Eyring by hand: V 60 m³, S 98 m², ᾱ 0.22: 0.161·60/(98·0.2485) = 0.397 s.
	expect(guessed.seconds).toBeCloseTo(0.397, 2);
});
