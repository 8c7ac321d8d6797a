import stringWidth from 'string-width';
import {describe, expect, test} from 'vitest';
import {drawPlan} from '../../source/report/plan.ts';
import {exampleScene} from './plan/exampleScene.ts';

const draw = (columns: number, rows: number, scene = exampleScene()) =>
	drawPlan(scene, {columns, rows, lengthUnit: 'm'});

describe.each([20, 60, 80, 120, 160])('at %i columns', columns => {
	test.each([1, 5, 12, 19, 24, 45])('drawPlan stays inside %i rows', rows => {
		const lines = draw(columns, rows);
		expect(lines.length).toBeLessThanOrEqual(rows);
		for (const line of lines) expect(stringWidth(line)).toBeLessThanOrEqual(columns);
	});
});

test('drawPlan shows both views, every label and every distance in what 80×24 leaves beside a question', () => {
	const text = draw(78, 19).join('\n');
	expect(text).toContain('From above');
	expect(text).toContain('From the side');
	expect(text).not.toContain('Not labelled');
	for (const label of ['screen', 'FL', 'FR', 'FC', 'LS', 'RS', 'TpSiL', 'TpSiR', 'sub1', 'sub2', 'sofa'])
		expect(text.split(label).length, label).toBeGreaterThan(2);
	// The distance from FL (0.75, 0.5, 0.98) to the ear (2.02, 3.45, 1.05) is √(1.27² + 2.95² + 0.07²) m.
	expect(text).toMatch(/FL +3\.21 m/);
});

test('drawPlan says that a view is missing when only one fits', () => {
	const text = draw(26, 24).join('\n');
	expect(text).toContain('From above');
	expect(text).not.toContain('From the side');
	expect(draw(60, 24, exampleScene({points: []})).join('\n')).toContain('From above');
});

test('drawPlan asks for a larger window, and still tells the distances, when nothing fits', () => {
	const text = draw(40, 9).join('\n');
	expect(text).toContain('larger window');
	expect(text).toMatch(/FL +3\.21 m/);
});

test('drawPlan looks from behind when the ceiling falls from left to right', () => {
	const {room} = exampleScene();
	const ceiling = {kind: 'sloped', between: 'wall:left-wall:right', heightsMetres: [2.4, 1.6]} as const;
	const text = draw(
		120,
		30,
		exampleScene({room: {...room, ceiling: {...ceiling, heightsMetres: [2.4, 1.6]}}}),
	);
	expect(text.join('\n')).toContain('From behind');
	expect(text[0]).toContain('ceiling 2.40 m left, 1.60 m right');
});

test('drawPlan draws a room of which no size is known, and says so', () => {
	const text = draw(80, 24, exampleScene({room: {}}));
	expect(text[0]).toBe('width not known, length not known');
	expect(text.join('\n')).toContain('FL');
});

test('drawPlan leaves a point out of the drawing when its place is not a number', () => {
	const scene = exampleScene();
	const points = scene.points.map(point => (point.id === 'LS' ? {...point, x: Number.NaN} : point));
	const lines = draw(100, 30, exampleScene({points}));
	expect(lines.join('\n')).toContain('FL');
	expect(lines.filter(line => /\bLS\b/.test(line)).every(line => /LS +–/.test(line))).toBe(true);
});
