import {describe, expect, test} from 'vitest';
import {cellWidth} from '../../source/report/fitCells.ts';
import type {PlanScene} from '../../source/report/plan/scene.ts';
import {drawPlanPair, type PlanSide, planPairText} from '../../source/report/planPair.ts';
import {exampleScene} from './plan/exampleScene.ts';

const empty: PlanScene = {room: {}, points: []};
const sides = (before = exampleScene(), after = exampleScene()): [PlanSide, PlanSide] => [
	{title: 'Before: Autumn', scene: before},
	{title: 'After: Spring', scene: after},
];

test('drawPlanPair says in words that there is no plan', () => {
	expect(drawPlanPair(sides(empty, empty), {columns: 80, rows: 22})).toEqual([
		'Before: Autumn: no plan, too few distances are read.',
		'After: Spring: no plan, too few distances are read.',
	]);
});

test('drawPlanPair draws the one plan that there is', () => {
	const lines = drawPlanPair(sides(empty), {columns: 80, rows: 22});
	expect(lines[0]).toBe('After: Spring');
	expect(lines.at(-1)).toContain('Before: Autumn: no plan');
});

test('drawPlanPair sets both side by side with their titles on one line', () => {
	expect(drawPlanPair(sides(), {columns: 80, rows: 22})[0]).toMatch(/^Before: Autumn +After: Spring$/);
});

test('drawPlanPair sets them one under the other where the width does not allow two', () => {
	const lines = drawPlanPair(sides(), {columns: 30, rows: 22});
	expect(lines[0]).toBe('Before: Autumn');
	expect(lines).toContain('After: Spring');
});

test('drawPlanPair draws equal rooms equally large, and a larger room larger', () => {
	const walls = (lines: readonly string[]) =>
		lines[1]!.split(/ {3}(?=⡏)/).map(part => cellWidth(part.trimEnd()));
	const [one, other] = walls(drawPlanPair(sides(), {columns: 100, rows: 22}));
	expect(other).toBe(one);
	const large = {...exampleScene(), room: {widthMetres: 8.1, lengthMetres: 5.3}};
	const [small, wide] = walls(drawPlanPair(sides(exampleScene(), large), {columns: 100, rows: 22}));
	// 8.1 m is twice 4.05 m; each is rounded up to whole cells of two dots.
	expect(Math.abs(wide! - 2 * small!)).toBeLessThanOrEqual(2);
});

test('drawPlanPair draws a dotted trail to where a thing stood', () => {
	const moved = exampleScene();
	const points = moved.points.map(point =>
		point.id === 'sub1' ? {...point, before: {x: 0.35, y: 2.6, z: 0.25}} : point,
	);
	const options = {columns: 80, rows: 22};
	const dots = (lines: readonly string[]) => lines.join('').replace(/[^⠁-⣿]/g, '').length;
	const trail = dots(drawPlanPair(sides(moved, {...moved, points}), options));
	expect(trail).toBeGreaterThan(dots(drawPlanPair(sides(moved, moved), options)));
});

describe.each([
	[20, 8],
	[40, 16],
	[60, 16],
	[80, 22],
	[120, 40],
	[160, 50],
])('at %i columns and %i lines', (columns, rows) => {
	test('drawPlanPair keeps to the width, and each plan to its lines', () => {
		const lines = drawPlanPair(sides(), {columns, rows});
		for (const line of lines) expect(cellWidth(line)).toBeLessThanOrEqual(columns);
		const second = lines.indexOf('After: Spring');
		// One more line tells what has no label.
		expect(second > 0 ? second : lines.length).toBeLessThanOrEqual(rows + 2);
	});
});

test('planPairText tells both plans in sentences without a drawing', () => {
	const text = planPairText(sides(), 'm');
	expect(text.filter(line => line.startsWith('Front left: 0.75 m from the left wall'))).toHaveLength(2);
	expect(text[0]).toBe('Before: Autumn.');
	expect(text.join('')).not.toMatch(/[⠀-⣿]/);
});
