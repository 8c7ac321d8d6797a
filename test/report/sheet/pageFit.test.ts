import fc from 'fast-check';
import {expect, test} from 'vitest';
import {type PageAmount, pageFit} from '../../../source/report/sheet/pageFit.ts';

const usual: PageAmount = {
	dialRows: 12.8,
	dialCells: 52,
	dialLines: 2,
	places: 16,
	placesCells: 62,
	cables: 13,
	warnings: 0,
	planShape: 1.3,
};

test('a usual page has what is typed in larger than the rest, and a drawing of more than a third of the width', () => {
	const {dialPt, smallPt, planMm} = pageFit(usual);
	expect(dialPt).toBeGreaterThan(smallPt * 1.3);
	expect(smallPt).toBeGreaterThanOrEqual(8.5);
	expect(planMm).toBeGreaterThan(188 / 3);
});

test('fewer rows are larger, up to 22 points', () => {
	const few = pageFit({...usual, dialRows: 7.8, cables: 0, places: 8});
	expect(few.dialPt).toBeGreaterThan(pageFit(usual).dialPt);
	expect(
		pageFit({
			...usual,
			dialRows: 3,
			dialCells: 20,
			places: 0,
			placesCells: 0,
			cables: 0,
			planShape: undefined,
		}),
	).toEqual({
		dialPt: 22,
		smallPt: 11,
		planMm: 0,
	});
});

test('whatever there is, sizes are sane and the drawing leaves the places their width', () => {
	const count = (max: number) => fc.integer({min: 0, max});
	fc.assert(
		fc.property(
			fc.record({
				dialRows: count(80),
				dialCells: count(160),
				dialLines: count(4),
				places: count(160),
				placesCells: count(120),
				cables: count(200),
				warnings: count(4),
				planShape: fc.option(fc.double({min: 0.2, max: 5, noNaN: true}), {nil: undefined}),
			}),
			amount => {
				const {dialPt, smallPt, planMm} = pageFit(amount);
				for (const size of [dialPt, smallPt]) expect(size).toBeGreaterThan(0);
				expect(dialPt).toBeLessThanOrEqual(22);
				expect(planMm).toBeGreaterThanOrEqual(0);
				expect(planMm).toBeLessThanOrEqual(96);
			},
		),
	);
});
