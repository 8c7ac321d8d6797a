import {expect, test} from 'vitest';
import {brailleCanvas} from '../../../source/report/braille.ts';
import {placeLabels} from '../../../source/report/plan/placeLabels.ts';

test('placeLabels writes beside the point when there is room', () => {
	const canvas = brailleCanvas(10, 3);
	expect(placeLabels(canvas, [{text: 'FL', x: 4, y: 5}], new Set(['2,1']))).toEqual([]);
	expect(canvas.lines()[1]).toBe('    FL    ');
});

test('placeLabels keeps a blank between two labels', () => {
	const canvas = brailleCanvas(14, 3);
	const wishes = [
		{text: 'FL', x: 4, y: 5},
		{text: 'FR', x: 8, y: 5},
	];
	placeLabels(canvas, wishes, new Set(['2,1', '4,1']));
	expect(canvas.lines().join('\n')).not.toMatch(/FLFR|FRFL/);
	for (const label of ['FL', 'FR']) expect(canvas.lines().join('\n')).toContain(label);
});

test('placeLabels turns to the other side at the edge', () => {
	const canvas = brailleCanvas(8, 1);
	placeLabels(canvas, [{text: 'FL', x: 14, y: 1}], new Set(['7,0']));
	expect(canvas.lines()).toEqual(['    FL  ']);
});

test('placeLabels gives back what it cannot place', () => {
	const canvas = brailleCanvas(3, 1);
	expect(placeLabels(canvas, [{text: 'TpSiL', x: 2, y: 1}], new Set())).toEqual(['TpSiL']);
	expect(canvas.lines()).toEqual(['   ']);
});

test('placeLabels never covers a mark', () => {
	const canvas = brailleCanvas(6, 1);
	const marks = new Set(['0,0', '3,0']);
	expect(placeLabels(canvas, [{text: 'FL', x: 0, y: 0}], marks)).toEqual(['FL']);
});
