import fc from 'fast-check';
import stringWidth from 'string-width';
import {expect, test} from 'vitest';
import {brailleCanvas} from '../../source/report/braille.ts';

test('brailleCanvas draws nothing when it has no cells', () => {
	const canvas = brailleCanvas(0, 0);
	canvas.line(0, 0, 10, 10);
	canvas.text(0, 0, 'FL');
	expect(canvas.lines()).toEqual([]);
});

test('brailleCanvas refuses sizes that are not whole numbers', () => {
	expect(() => brailleCanvas(2.5, 2)).toThrow('columns must be a whole number from 0 to 1000, got 2.5');
	expect(() => brailleCanvas(2, -1)).toThrow('rows must be a whole number from 0 to 1000, got -1');
});

// The Unicode Standard, chapter 21.1: dot n of a braille pattern is bit n − 1; dots 1 2 3 7 run down the left
// column, 4 5 6 8 down the right.
test.each([
	[0, 0, '⠁'],
	[0, 1, '⠂'],
	[0, 2, '⠄'],
	[0, 3, '⡀'],
	[1, 0, '⠈'],
	[1, 1, '⠐'],
	[1, 2, '⠠'],
	[1, 3, '⢀'],
])('dot at %i, %i is the pattern that Unicode gives it', (x, y, pattern) => {
	const canvas = brailleCanvas(1, 1);
	canvas.dot(x, y);
	expect(canvas.lines()).toEqual([pattern]);
});

test('brailleCanvas ignores dots and lines that are outside or not numbers', () => {
	const canvas = brailleCanvas(2, 1);
	canvas.dot(-1, 0);
	canvas.dot(4, 0);
	canvas.dot(Number.NaN, 0);
	canvas.line(0, Number.NaN, 3, 3);
	canvas.line(Number.NEGATIVE_INFINITY, 0, 3, 0);
	canvas.line(10, 10, 20, 20);
	expect(canvas.lines()).toEqual(['  ']);
});

test('line joins both ends without a gap', () => {
	const canvas = brailleCanvas(2, 1);
	canvas.line(0, 0, 3, 3);
	expect(canvas.lines()).toEqual(['⠑⢄']);
});

test('line reaches across the whole area when its ends are far outside', () => {
	const canvas = brailleCanvas(3, 1);
	canvas.line(-1e9, 1, 1e9, 1);
	expect(canvas.lines()).toEqual(['⠒⠒⠒']);
});

test('line leaves out the gaps of its pattern', () => {
	const canvas = brailleCanvas(4, 1);
	canvas.line(0, 0, 7, 0, [1, 1]);
	expect(canvas.lines()).toEqual(['⠁⠁⠁⠁']);
});

test('path runs its pattern on across joints', () => {
	const joined = brailleCanvas(6, 1);
	joined.path(
		[
			[0, 0],
			[3, 0],
			[7, 0],
			[11, 0],
		],
		[3, 3],
	);
	const single = brailleCanvas(6, 1);
	single.line(0, 0, 11, 0, [3, 3]);
	expect(joined.lines()).toEqual(single.lines());
});

test('ellipse keeps to its half axes, and a circle is the same in both directions', () => {
	const canvas = brailleCanvas(20, 10);
	canvas.ellipse(20, 20, 12, 6);
	for (const [x, y, isDrawn] of [
		[32, 20, true],
		[8, 20, true],
		[20, 14, true],
		[20, 26, true],
		[33, 20, false],
		[20, 20, false],
	] as const) {
		const before = canvas.weight(x >> 1, y >> 2, 1);
		canvas.dot(x, y);
		expect(canvas.weight(x >> 1, y >> 2, 1) === before).toBe(isDrawn);
	}
});

test('ellipse turns counter-clockwise on the screen', () => {
	const canvas = brailleCanvas(10, 5);
	canvas.ellipse(10, 10, 9, 1, 45);
	const lines = canvas.lines().filter(line => line.trim() !== '');
	const firstColumn = (line: string) => line.length - line.trimStart().length;
	expect(firstColumn(lines[0]!)).toBeGreaterThan(5);
	expect(firstColumn(lines.at(-1)!)).toBeLessThan(3);
});

test('text stands over dots and is cut at the edges', () => {
	const canvas = brailleCanvas(4, 1);
	canvas.line(0, 0, 7, 0);
	canvas.text(2, 0, 'FLc');
	expect(canvas.lines()).toEqual(['⠉⠉FL']);
	canvas.text(-1, 0, 'ab');
	expect(canvas.lines()).toEqual(['b⠉FL']);
});

test('text gives wide characters two cells', () => {
	const canvas = brailleCanvas(5, 1);
	canvas.text(0, 0, '前方左');
	expect(canvas.lines()).toEqual(['前方 ']);
	expect(canvas.weight(3, 0, 1)).toBe(Infinity);
	canvas.text(1, 0, 'ab');
	expect(canvas.lines()).toEqual([' ab  ']);
});

test('weight counts dots, and is infinite where a text stands or the area ends', () => {
	const canvas = brailleCanvas(4, 2);
	canvas.line(0, 0, 7, 0);
	canvas.text(0, 1, 'FL');
	expect(canvas.weight(0, 0, 2)).toBe(4);
	expect(canvas.weight(1, 1, 1)).toBe(Infinity);
	expect(canvas.weight(2, 1, 2)).toBe(0);
	expect(canvas.weight(3, 0, 2)).toBe(Infinity);
	expect(canvas.weight(0, 2, 1)).toBe(Infinity);
});

test('every row is exactly as wide as the canvas, whatever is drawn', () => {
	const number = fc.oneof(fc.double(), fc.integer({min: -50, max: 150}));
	fc.assert(
		fc.property(
			fc.tuple(number, number, number, number),
			fc.string({unit: 'grapheme', maxLength: 6}),
			([a, b, c, d], text) => {
				fc.pre(!/\p{C}|\p{Z}|\p{M}/u.test(text));
				const canvas = brailleCanvas(20, 5);
				canvas.line(a, b, c, d, [2, 1]);
				canvas.ellipse(a, b, c, d, 30);
				canvas.text(Math.round(Number.isFinite(a) ? a % 30 : 0), 2, text);
				for (const line of canvas.lines()) expect(stringWidth(line)).toBe(20);
			},
		),
		{seed: 3},
	);
});
