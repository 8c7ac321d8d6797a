import {expect, test} from 'vitest';
import {referencePoint, separation} from '../../../source/report/plan/scene.ts';
import {exampleScene} from './exampleScene.ts';

test('referencePoint is missing when there is no seat', () => {
	expect(referencePoint({room: {}, points: []})).toBeUndefined();
});

test('referencePoint is the marked seat, else the first', () => {
	const scene = exampleScene();
	expect(referencePoint(scene)?.id).toBe('sofa');
	const points = scene.points.map(({reference, ...point}) => point).toReversed();
	expect(referencePoint({...scene, points})?.id).toBe('left');
});

test('separation is the straight distance', () => {
	expect(separation({x: 0, y: 0, z: 0}, {x: 2, y: 3, z: 6})).toBe(7);
});
