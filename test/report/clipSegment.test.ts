import fc from 'fast-check';
import {expect, test} from 'vitest';
import {clipSegment} from '../../source/report/clipSegment.ts';

const area = [0, 0, 10, 6] as const;

test('clipSegment gives nothing when the segment passes by', () => {
	expect(clipSegment([-5, -1, 15, -1], area)).toBeUndefined();
	expect(clipSegment([12, 0, 12, 6], area)).toBeUndefined();
	expect(clipSegment([9, -4, 14, 1], area)).toBeUndefined();
});

test('clipSegment keeps a segment that lies inside, also a single point', () => {
	expect(clipSegment([1, 1, 9, 5], area)).toEqual([1, 1, 9, 5]);
	expect(clipSegment([3, 3, 3, 3], area)).toEqual([3, 3, 3, 3]);
});

test('clipSegment cuts at the edges', () => {
	expect(clipSegment([-10, 3, 20, 3], area)).toEqual([0, 3, 10, 3]);
	expect(clipSegment([4, -6, 4, 12], area)).toEqual([4, 0, 4, 6]);
});

test('clipSegment keeps exactly the points of the segment that lie inside', () => {
	const coordinate = fc.double({min: -30, max: 30, noNaN: true});
	fc.assert(
		fc.property(
			fc.tuple(coordinate, coordinate, coordinate, coordinate),
			fc.double({min: 0, max: 1, noNaN: true}),
			([x1, y1, x2, y2], share) => {
				const x = x1 + share * (x2 - x1);
				const y = y1 + share * (y2 - y1);
				const clearly = Math.min(x - area[0], area[2] - x, y - area[1], area[3] - y);
				fc.pre(Math.abs(clearly) > 1e-9);
				const clipped = clipSegment([x1, y1, x2, y2], area);
				if (clearly > 0) expect(clipped).toBeDefined();
				if (!clipped) return;
				const [fromX, fromY, toX, toY] = clipped;
				const lowX = Math.min(fromX, toX) - 1e-9;
				const highX = Math.max(fromX, toX) + 1e-9;
				const lowY = Math.min(fromY, toY) - 1e-9;
				const highY = Math.max(fromY, toY) + 1e-9;
				expect(x >= lowX && x <= highX && y >= lowY && y <= highY).toBe(clearly > 0);
			},
		),
		{seed: 11, numRuns: 500},
	);
});
