import {expect, test} from 'vitest';
import {cellsFor, drawView} from '../../../source/report/plan/drawView.ts';
import {outlineOf} from '../../../source/report/plan/outline.ts';
import type {PlanPoint} from '../../../source/report/plan/scene.ts';
import {exampleScene} from './exampleScene.ts';

const isDrawn = (lines: readonly string[], x: number, y: number): boolean => {
	const bits = [
		[0x01, 0x08],
		[0x02, 0x10],
		[0x04, 0x20],
		[0x40, 0x80],
	];
	const code = lines[y >> 2]!.codePointAt(x >> 1)! - 0x28_00;
	return code > 0 && (code & bits[y & 3]![x & 1]!) !== 0;
};

const bare = (points: readonly PlanPoint[] = []) => exampleScene({points});

test('drawView draws a room of 4 m by 5 m at 10 dots a metre with square dots', () => {
	const scene = exampleScene({room: {widthMetres: 4, lengthMetres: 5}, points: []});
	const {lines} = drawView(scene, 'above', 10);
	// 41 dots across are 21 cells of two, 51 dots down are 13 cells of four.
	expect(lines).toHaveLength(13);
	expect(lines[0]).toHaveLength(21);
	for (const [x, y] of [
		[0, 0],
		[40, 0],
		[0, 50],
		[40, 50],
		[20, 0],
		[20, 50],
		[0, 25],
		[40, 25],
	])
		expect(isDrawn(lines, x!, y!), `${x},${y}`).toBe(true);
	expect(isDrawn(lines, 20, 25)).toBe(false);
});

test('drawView puts a speaker where it stands', () => {
	const point: PlanPoint = {id: 'FL', label: '', kind: 'speaker', x: 1, y: 2, z: 1};
	const {lines} = drawView(bare([point]), 'above', 10);
	expect(isDrawn(lines, 10, 20)).toBe(true);
	expect(isDrawn(lines, 10, 25)).toBe(false);
});

test('drawView shows the ceiling falling from the screen wall to the back', () => {
	const {lines} = drawView(bare(), 'side', 10);
	// Heights 2.62 m and 1.98 m: the ceiling starts at the top and ends 6.4 dots lower, 53 dots away.
	expect(isDrawn(lines, 0, 0)).toBe(true);
	expect(isDrawn(lines, 53, 6)).toBe(true);
	expect(isDrawn(lines, 53, 0)).toBe(false);
	expect(isDrawn(lines, 26, 26)).toBe(true);
});

test('drawView draws an error ellipse only when it is larger than the mark', () => {
	const point = {id: 'FL', label: '', kind: 'speaker', x: 2, y: 2.5, z: 1} as const;
	const large = {...point, ellipse: {majorMetres: 0.8, minorMetres: 0.3, angleDegrees: 0}};
	const small = {...point, ellipse: {majorMetres: 0.05, minorMetres: 0.03, angleDegrees: 0}};
	const plain = drawView(bare([point]), 'above', 10).lines;
	expect(drawView(bare([small]), 'above', 10).lines).toEqual(plain);
	const drawn = drawView(bare([large]), 'above', 10).lines;
	expect(isDrawn(drawn, 28, 25)).toBe(true);
	expect(isDrawn(drawn, 20, 28)).toBe(true);
	expect(isDrawn(drawn, 20, 33)).toBe(false);
});

test('drawView turns an error ellipse from x towards y, which runs down', () => {
	const ellipse = {majorMetres: 1, minorMetres: 0.1, angleDegrees: 45};
	const {lines} = drawView(
		bare([{id: 'FL', label: '', kind: 'speaker', x: 2, y: 2.5, z: 1, ellipse}]),
		'above',
		10,
	);
	const near = (x: number, y: number) =>
		[-1, 0, 1].some(dx => [-1, 0, 1].some(dy => isDrawn(lines, x + dx, y + dy)));
	expect(near(27, 32)).toBe(true);
	expect(near(27, 18)).toBe(false);
});

test('drawView names the labels for which there is no place', () => {
	const crowd = Array.from(
		{length: 60},
		(_, index): PlanPoint => ({
			id: `p${index}`,
			label: `label${index}`,
			kind: 'speaker',
			x: 2,
			y: 2,
			z: 1,
		}),
	);
	const {lines, unlabelled} = drawView(bare(crowd), 'above', 6);
	expect(unlabelled.length).toBeGreaterThan(0);
	const shown = crowd.filter(({label}) => lines.some(line => new RegExp(`${label}(?!\\d)`).test(line)));
	expect(shown.length + unlabelled.length).toBe(60);
});

test('cellsFor gives room for the whole outline', () => {
	const outline = outlineOf(exampleScene(), 'above');
	const [columns, rows] = cellsFor(outline, 10);
	expect(columns * 2).toBeGreaterThan(40.5);
	expect(rows * 4).toBeGreaterThan(53);
});
