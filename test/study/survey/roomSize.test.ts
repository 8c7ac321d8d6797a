import {expect, test} from 'vitest';
import {ceilingHeightAt, outsideBy, slopeOf} from '../../../source/study/survey/roomSize.ts';

test('ceilingHeightAt knows nothing of a ceiling or a slope whose span is not known', () => {
	expect(ceilingHeightAt({}, 1, 1)).toBeUndefined();
	expect(ceilingHeightAt({ceiling: {axis: 0, heightsMetres: [2, 3]}}, 1, 1)).toBeUndefined();
});

test('ceilingHeightAt is linear between the two walls', () => {
	const size = {widthMetres: 4, ceiling: {axis: 0 as const, heightsMetres: [2, 3] as const}};
	expect([0, 1, 4].map(x => ceilingHeightAt(size, x, 2))).toEqual([2, 2.25, 3]);
});

test('outsideBy is the largest distance beyond a known plane', () => {
	const size = {widthMetres: 4, lengthMetres: 5, ceiling: {heightMetres: 2.5}};
	expect(outsideBy(size, [2, 2, 1])).toBe(0);
	expect(outsideBy(size, [-0.1, 5.3, 1])).toBeCloseTo(0.3, 12);
	expect(outsideBy({}, [9, 9, 9])).toBe(0);
});

test('slopeOf takes the axis from the pair of walls', () => {
	const ceiling = {
		kind: 'sloped' as const,
		between: 'wall:front-wall:back' as const,
		heightsMetres: [2, 3] as [number, number],
	};
	expect(slopeOf({name: 'x', ceiling})).toEqual({axis: 1, heightsMetres: [2, 3]});
	expect(slopeOf({name: 'x'})).toBeUndefined();
});
