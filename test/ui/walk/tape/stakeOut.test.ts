import {expect, test} from 'vitest';
import type {Profile} from '../../../../source/profile/types.ts';
import {againstPlan} from '../../../../source/study/placement/againstPlan.ts';
import {adjustNetwork} from '../../../../source/study/survey/adjust.ts';
import {currentPrompt, type RoundState, reduceRound, startRound} from '../../../../source/ui/walk/state.ts';
import {walkRound} from '../../../../source/ui/walk/stops.ts';
import {withoutStakes} from '../../../../source/ui/walk/tape/stakeOut.ts';
import {den} from '../../rooms.ts';

const planned: Profile = den({
	lengthUnit: 'm',
	room: {name: 'Den', widthMetres: 4, lengthMetres: 6, ceiling: {kind: 'flat', heightMetres: 2.4}},
	planned: {
		places: [
			{id: 'sub1', xMetres: 3.5, yMetres: 0.3, zMetres: 0.22},
			{id: 'TpSiL', xMetres: 1, yMetres: 3.8, zMetres: 2.3},
			{id: 'seat1', xMetres: 2, yMetres: 3.9, zMetres: 1.1},
		],
		withinMetres: 0.08,
		costDb: 0.1,
	},
});

type State = RoundState<Profile>;
const begin = (profile: Profile): State => startRound(walkRound, profile, undefined);
const asked = (state: State) => currentPrompt(walkRound, state);
const answer = (state: State, text: string): State =>
	reduceRound(walkRound, {...state, typed: text}, {kind: 'take', takenAt: '2026-04-18T20:00:00Z'});

test('where nothing was chosen there is no stake-out', () => {
	const {withinMetres: _, ...begun} = planned.planned!;
	for (const profile of [den(), {...planned, planned: begun}])
		expect(asked(begin(profile)).id).not.toContain('stake');
});

test('it comes first in Tape, the seat before all, each cross from two walls', () => {
	let state = begin(planned);
	expect(asked(state).id).toBe('tape:stake:how');
	state = answer(state, '2');
	const crosses = [];
	for (let i = 0; i < 3; i++) {
		crosses.push(asked(state).question);
		state = answer(state, '1');
	}

	expect(crosses[0]).toContain('Cross A');
	expect(crosses[0]).toContain('2.00 m from the left wall');
	// Six metres long: 6 − 3.9 is nearer.
	expect(crosses[0]).toContain('2.10 m from the back wall');
	expect(crosses[1]).toContain('Cross B');
	expect(crosses[1]).toContain('0.50 m from the right wall');
	expect(asked(state).id).toBe('tape:stake:carried');
	expect(asked(state).caution).toMatch(/Heavy/);
});

test('two people carry each thing at once and read it: one reading in place and one check', () => {
	let state = answer(begin(planned), '1');
	state = answer(state, '1');
	expect(asked(state).question).toContain('to the left wall');
	state = answer(state, '2.03');
	expect(state.notes.map(({text}) => text).join(' ')).toContain('good enough');
	expect(asked(state).question).toContain('check');
	state = answer(state, '2.25');
	expect(state.notes.map(({text}) => text).join(' ')).toContain('0.15 m nearer to the back wall');
	expect(state.subject.tape).toMatchObject([
		{from: 'seat1', to: 'wall:left', metres: 2.03},
		{from: 'seat1', to: 'wall:back', metres: 2.25},
	]);
	expect(asked(state).question).toContain('Cross B');
});

test('good enough is judged by both walls together, in the stake-out as by place', () => {
	let state = answer(answer(begin(planned), '1'), '1');
	// 6 cm is within 8 cm, 6 cm along both walls is 8.5 cm.
	state = answer(state, '2.06');
	expect(state.notes.map(({text}) => text).join(' ')).toContain('good enough');
	state = answer(state, '2.04');
	const said = state.notes.map(({text}) => text).join(' ');
	expect(said).toContain('0.06 m nearer to the left wall and 0.06 m farther from the back wall');
	const profile = {
		...state.subject,
		tape: [...(state.subject.tape ?? []), {from: 'seat1', to: 'floor', metres: 1.1}],
	};
	const [seat] = againstPlan(profile, adjustNetwork(profile)).filter(({id}) => id === 'seat1');
	expect(seat!.offMetres).toBeCloseTo(0.06 * Math.SQRT2, 3);
	expect(seat!.isGoodEnough).toBe(false);
});

test('overheads get a cross on the floor, the laser straight up and the caution of the ladder', () => {
	let state = answer(begin(planned), '1');
	for (const text of ['1', '2', '2.1', '1', '0.5', '0.3']) state = answer(state, text);
	expect(asked(state).question).toContain('Top side left');
	expect(asked(state).about).toContain('laser');
	expect(asked(state).caution).toMatch(/Ladder/);
});

test('the places know what was planned', () => {
	const tape = [
		{from: 'seat1', to: 'wall:left', metres: 2.03},
		{from: 'seat1', to: 'wall:back', metres: 2.05},
		{from: 'seat1', to: 'floor', metres: 1.1},
	];
	const profile = {...planned, tape};
	const [seat] = againstPlan(profile, adjustNetwork(profile)).filter(({id}) => id === 'seat1');
	// Planned at 2 m and 3.9 m: 3 cm to the right, 5 cm back.
	expect(seat!.rightMetres).toBeCloseTo(0.03, 3);
	expect(seat!.backMetres).toBeCloseTo(0.05, 3);
	expect(seat!.isGoodEnough).toBe(true);
});

test('a box of known size is read at its back and side, and the rest of it is added', () => {
	const sized = {
		...planned,
		subs: planned.subs!.map(sub => ({...sub, boxWidthMetres: 0.4, boxDepthMetres: 0.5})),
	};
	let state = answer(begin(sized), '1');
	while (!asked(state).question.includes('Cross B'))
		state = answer(state, asked(state).kind === 'choice' ? '1' : '2');
	// Half of 0.4 m before 0.5 m from the right wall, half of 0.5 m before 0.3 m from the screen wall.
	expect(asked(state).about).toContain(
		'its side 0.30 m from the right wall, its back 0.05 m from the screen wall',
	);
	state = answer(state, '1');
	expect(asked(state).question).toContain('from its side to the right wall');
	expect(asked(state).about).toContain('Planned 0.30 m');
	state = answer(state, '0.32');
	expect(state.notes.map(({text}) => text).join(' ')).toContain('0.02 m off the plan: good enough');
	const read = state.subject.tape!.at(-1)!;
	expect({...read, metres: undefined}).toMatchObject({from: 'sub1', to: 'wall:right'});
	expect(read.metres).toBeCloseTo(0.52, 9);
	// Its back may touch the wall.
	state = answer(state, '0');
	expect(state.subject.tape!.at(-1)!.metres).toBeCloseTo(0.25, 9);
});

test('a plan that is chosen anew asks for the crosses of what moves again, and for nothing else', () => {
	let state = answer(begin(planned), '2');
	for (let i = 0; i < 4; i++) state = answer(state, '1');
	const anew = begin(withoutStakes(state.subject, ['sub1']));
	expect(asked(anew).id).toBe('tape:stake:how');
	expect(asked(answer(anew, '2')).id).toBe('tape:stake:cross:sub1');
	expect(asked(answer(answer(anew, '2'), '1')).id).toBe('tape:stake:carried');
});
