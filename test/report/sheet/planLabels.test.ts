import fc from 'fast-check';
import {expect, test} from 'vitest';
import {labelsBeside} from '../../../source/report/sheet/planLabels.ts';

const frame = {left: 0, top: 0, right: 600, bottom: 800};

test('a lone name stands to the right of its symbol, and to the left where the right is outside', () => {
	expect(labelsBeside([{text: 'FL', x: 100, y: 100}], frame, 25)[0]!.x).toBeGreaterThan(100);
	expect(labelsBeside([{text: 'FR', x: 590, y: 100}], frame, 25)[0]!.x).toBeLessThan(590);
});

test('two symbols side by side keep their names off each other', () => {
	const [a, b] = labelsBeside(
		[
			{text: 'Sofa left', x: 200, y: 400},
			{text: 'Sofa right', x: 270, y: 400},
		],
		frame,
		25,
	);
	const isApart = Math.abs(a!.y - b!.y) >= 25 || a!.x + 9 * 14 <= b!.x || b!.x + 10 * 14 <= a!.x;
	expect(isApart).toBe(true);
});

test('every symbol gets exactly one name, in its order', () => {
	const symbol = fc.record({
		text: fc.string({maxLength: 12}),
		x: fc.double({min: 0, max: 600, noNaN: true}),
		y: fc.double({min: 0, max: 800, noNaN: true}),
	});
	fc.assert(
		fc.property(fc.array(symbol, {maxLength: 40}), symbols => {
			expect(labelsBeside(symbols, frame, 25).map(({text}) => text)).toEqual(symbols.map(({text}) => text));
		}),
	);
});
