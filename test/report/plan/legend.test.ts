import {expect, test} from 'vitest';
import {planLegend} from '../../../source/report/plan/legend.ts';
import {exampleScene} from './exampleScene.ts';

test('planLegend is empty when there is no seat or nothing to measure', () => {
	const {room, points} = exampleScene();
	expect(planLegend({room, points: points.filter(({kind}) => kind !== 'seat')}, 'm', 80)).toEqual([]);
	expect(planLegend({room, points: points.filter(({kind}) => kind === 'seat')}, 'm', 80)).toEqual([]);
});

test('planLegend measures from the reference seat, whichever comes first', () => {
	const {room, points} = exampleScene();
	expect(planLegend({room, points: points.toReversed()}, 'm', 80)[0]).toBe('From Sofa middle:');
});

test('planLegend sets as many distances side by side as fit', () => {
	const wide = planLegend(exampleScene(), 'm', 80);
	const narrow = planLegend(exampleScene(), 'm', 14);
	expect(wide.length).toBeLessThan(4);
	expect(narrow).toHaveLength(10);
	expect(narrow[1]).toBe('FL    3.21 m');
});
