import {expect, test} from 'vitest';
import {keepOuts, standsOn} from '../../../source/study/arrangement/keepOut.ts';
import {planMeasures} from '../../../source/study/arrangement/measures.ts';
import {notHereAt} from '../../../source/study/arrangement/notHere.ts';
import {planBench} from '../../../source/study/arrangement/planBench.ts';
import {planTolerance} from '../../../source/study/arrangement/tolerance.ts';
import {judgeVariants} from '../../../source/study/arrangement/variants.ts';
import type {Vector} from '../../../source/study/survey/vectors.ts';

const shape = {kind: 'box', widthMetres: 3.6, lengthMetres: 4.8, heightMetres: 2.4} as const;
const room = {shape, decay: {seconds: 0.4, from: 'estimated'}, speedOfSound: 343} as const;
const seats: Vector[] = [
	[1.8, 3.2, 1.1],
	[1.15, 3.2, 1.1],
];
const subs: Vector[] = [
	[0.25, 0.25, 0.22],
	[3.35, 0.25, 0.22],
];

test('a thing moved live is judged as by the command: same draws, same errors', () => {
	const bench = planBench({room});
	bench.judge({subs, seats, lifted: 0});
	const moved = [subs[0]!, [3.35, 4.5, 0.22] as const];
	const live = bench.judge({subs: moved, seats, lifted: 1}).judged;
	const [full] = judgeVariants({room, steps: undefined}, [{subs: moved, seats, lifted: 1}]);
	expect(live.meanDb).toBeCloseTo(full!.judged.meanDb, 9);
	expect(live.draws).toHaveLength(20);
	expect(bench.outside({subs: [[3.7, 1, 0.2]], seats})).toEqual([0]);
});

test('a few centimetres off the crosses cost little', () => {
	const {withinMetres, costDb} = planTolerance(planBench({room}), {subs, seats});
	expect(withinMetres).toBe(0.08);
	expect(costDb).toBeGreaterThanOrEqual(0);
	// A tenth of the spread between arrangements: what is carried must not have to stand to the centimetre.
	expect(costDb).toBeLessThan(0.3);
});

test('“not here” keeps a sub off that stretch, at a wall and in the open', () => {
	for (const at of [
		[0.25, 2.5, 0.22],
		[3.35, 4.55, 0.22],
		[1.8, 2.4, 0.22],
	] as const) {
		const taken = keepOuts([notHereAt(at, shape, 'the cat')], shape);
		expect(standsOn(taken, at[0], at[1], 0.2)).toMatchObject({kind: 'notHere', note: 'the cat'});
	}
});

test('angles, view and cable are those of geometry', () => {
	const channels = [{id: 'FL'}, {id: 'FR'}, {id: 'FC'}, {id: 'LS'}, {id: 'RS'}] as const;
	const at30 = 3 * Math.tan(Math.PI / 6);
	const speakers = [
		{id: 'FC', at: [1.8, 0, 1.1] as Vector},
		{id: 'FL', at: [1.8 - at30, 0, 1.1] as Vector},
	];
	const measured = planMeasures({channels: [...channels], screen: {widthMetres: 2}}, shape, speakers, {
		subs: [[0.3, 0.25, 0.2]],
		seats: [[1.8, 3, 1.1]],
	});
	expect(measured.outsideDegrees).toBe(0);
	// A picture 2 m wide from 3 m: 2·atan(1/3) = 36.87°.
	expect(measured.viewingDegrees).toBeCloseTo(36.87, 2);
	expect(measured.cableMetres).toBeCloseTo(1.5 + 0.25, 9);
	const closer = planMeasures({channels: [...channels]}, shape, speakers, {subs: [], seats: [[1.8, 2, 1.1]]});
	// From 2 m the same speaker stands at atan(1.732/2) = 40.9°: 10.9° off, 5.9° beyond the five that pass.
	expect(closer.outsideDegrees).toBeCloseTo(5.9, 1);
});
