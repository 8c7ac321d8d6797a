import {expect, test} from 'vitest';
import {elevationOf, flatten, outlineOf} from '../../../source/report/plan/outline.ts';
import {exampleScene} from './exampleScene.ts';

test('outlineOf of an empty, unknown room is finite', () => {
	for (const view of ['above', 'side', 'behind'] as const) {
		const {width, height} = outlineOf({room: {}, points: []}, view);
		expect(Number.isFinite(width + height)).toBe(true);
	}
});

test('outlineOf is exactly the room when everything stands inside', () => {
	expect(outlineOf(exampleScene(), 'above')).toMatchObject({left: 0, top: 0, width: 4.05, height: 5.3});
	expect(outlineOf(exampleScene(), 'side')).toMatchObject({left: 0, top: -2.62, width: 5.3, height: 2.62});
});

test('outlineOf makes room for a point that lies outside the walls', () => {
	const scene = exampleScene();
	const outside = {...scene.points[1]!, x: -1};
	const {left} = outlineOf({...scene, points: [...scene.points, outside]}, 'above');
	expect(left).toBeLessThan(-1);
});

test('flatten keeps the right side of the room right, and up above down', () => {
	const place = {x: 1, y: 2, z: 3};
	expect(flatten(place, 'above')).toEqual([1, 2]);
	expect(flatten(place, 'side')).toEqual([2, -3]);
	expect(flatten(place, 'behind')).toEqual([1, -3]);
});

test('elevationOf picks the view in which the slope shows', () => {
	expect(elevationOf(exampleScene())).toBe('side');
	expect(elevationOf({room: {}, points: []})).toBe('side');
	const ceiling = {kind: 'sloped' as const, between: 'wall:left-wall:right' as const};
	expect(elevationOf({room: {ceiling: {...ceiling, heightsMetres: [2, 3]}}, points: []})).toBe('behind');
});
