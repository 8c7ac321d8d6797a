import {expect, test} from 'vitest';
import {referenceSeat, separation} from '../../../source/report/plan/scene.ts';
import {exampleScene} from './exampleScene.ts';

test('referenceSeat is missing when there is no seat', () => {
	expect(referenceSeat({room: {}, points: []})).toBeUndefined();
});

test('referenceSeat is the marked seat, else the first', () => {
	const scene = exampleScene();
	expect(referenceSeat(scene)?.id).toBe('sofa');
	const points = scene.points.map(({reference, ...point}) => point).toReversed();
	expect(referenceSeat({...scene, points})?.id).toBe('left');
});

test('separation is the straight distance', () => {
	expect(separation({x: 0, y: 0, z: 0}, {x: 2, y: 3, z: 6})).toBe(7);
});
