import {expect, test} from 'vitest';
import {planText} from '../../../source/report/plan/planText.ts';
import {exampleScene} from './exampleScene.ts';

test('planText says what is not known of an empty room', () => {
	expect(planText({room: {}, points: []}, 'm')).toEqual(['Room: width not known, length not known.']);
});

test('planText gives every point a sentence in tape terms', () => {
	const sentences = planText(exampleScene(), 'm');
	expect(sentences).toHaveLength(13);
	expect(sentences[0]).toBe('Room: 4.05 m wide, 5.30 m long, ceiling 2.62 m front, 1.98 m back.');
	expect(sentences[2]).toBe(
		'Front left: 0.75 m from the left wall, 0.50 m from the screen wall, 0.98 m up; 3.21 m to Sofa middle; aimed at Sofa middle.',
	);
});

test('planText measures from the nearer side wall', () => {
	expect(planText(exampleScene(), 'm')[3]).toContain('Front right: 0.75 m from the right wall');
});

test('planText tells how well a point is known', () => {
	expect(planText(exampleScene(), 'm')[5]).toContain('known to ± 0.30 m');
});

test('planText uses the display unit', () => {
	expect(planText(exampleScene(), 'ft-in')[2]).toContain('10′ 6 1/2″ to Sofa middle');
});

test('planText names the place when a speaker is not aimed at a seat', () => {
	const scene = exampleScene();
	const points = [{...scene.points[1]!, aim: {x: 2, y: 5.3, z: 1.2}}, ...scene.points.slice(8)];
	expect(planText({...scene, points}, 'm')[1]).toContain(
		'aimed at the place 2.00 m from the left wall, 5.30 m from the screen wall, 1.20 m up',
	);
});
