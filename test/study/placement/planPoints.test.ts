import {expect, test} from 'vitest';
import {drawPlan} from '../../../source/report/plan.ts';
import {planPoints} from '../../../source/study/placement/planPoints.ts';
import {adjustNetwork} from '../../../source/study/survey/adjust.ts';
import {ear, placedAt, screenAhead} from '../survey/exampleNetwork.ts';
import {bareProfile} from '../survey/room.ts';

test('planPoints has no point when nothing is measured', () => {
	expect(planPoints(adjustNetwork(bareProfile())).points).toEqual([]);
});

test('planPoints gives the drawing what it needs', () => {
	const {profile, result} = placedAt(
		{sofa: ear, screen: screenAhead, FL: [1, 0.5, 1], sub1: [0.4, 0.4, 0.25]},
		{screen: {widthMetres: 2}},
	);
	const plan = planPoints(result, profile.screen);
	expect(plan.room).toEqual({widthMetres: 5, lengthMetres: 6, ceiling: {kind: 'flat', heightMetres: 2.6}});
	const of = (id: string) => plan.points.find(point => point.id === id)!;
	expect(of('sofa').reference).toBe(true);
	expect(of('FL').aim!.y).toBeCloseTo(3.8, 5);
	expect(of('sub1').aim).toBeUndefined();
	expect(of('screen').widthMetres).toBe(2);
	expect(plan.points.every(({ellipse}) => ellipse === undefined)).toBe(true);
	expect(drawPlan(plan, {columns: 80, rows: 22, lengthUnit: 'm'}).join('\n')).toContain('FL');
});

test('planPoints shows an ellipse where a place is known only roughly', () => {
	const {profile} = placedAt({sofa: ear, screen: screenAhead, FL: [1, 0.5, 1]});
	const loose = {
		...profile,
		tape: profile.tape!.map(one =>
			one.from === 'FL' && one.to === 'wall:left' ? {...one, sigmaMetres: 0.2} : one,
		),
	};
	const {ellipse} = planPoints(adjustNetwork(loose)).points.find(({id}) => id === 'FL')!;
	expect(ellipse!.majorMetres).toBeCloseTo(0.2, 3);
	expect(Math.abs(ellipse!.angleDegrees)).toBeLessThan(1);
});

test('planPoints draws what no plane tells as it was stated: a ridge, and a corner that is missing', () => {
	const {result} = placedAt({sofa: ear, FL: [1, 0.5, 1]}, {});
	const ceiling = {
		kind: 'broken' as const,
		between: 'wall:left-wall:right' as const,
		places: [
			{atMetres: 0, heightMetres: 1.2},
			{atMetres: 2.5, heightMetres: 3.2},
			{atMetres: 5, heightMetres: 1.2},
		],
	};
	const missingCorner = {corner: 'backLeft' as const, widthMetres: 2, lengthMetres: 2};
	const plan = planPoints(result, undefined, {ceiling, missingCorner});
	expect(plan.room).toMatchObject({widthMetres: 5, lengthMetres: 6, ceiling, missingCorner});
	const drawn = drawPlan(plan, {columns: 80, rows: 24, lengthUnit: 'm'}).join('\n');
	const flat = drawPlan(planPoints(result), {columns: 80, rows: 24, lengthUnit: 'm'}).join('\n');
	expect(drawn).not.toBe(flat);
});
