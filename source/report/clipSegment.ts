type Segment = readonly [x1: number, y1: number, x2: number, y2: number];
type Area = readonly [left: number, top: number, right: number, bottom: number];

/**
The part of a segment inside an upright rectangle, or nothing.

@param segment - Two ends, finite, any unit.
@see Y.-D. Liang and B. Barsky, "A new concept and method for line clipping", ACM Trans. Graphics 3 (1984), 1–22.
*/
export function clipSegment(
	[x1, y1, x2, y2]: Segment,
	[left, top, right, bottom]: Area,
): Segment | undefined {
	let from = 0;
	let to = 1;
	const edges = [
		[x1 - x2, x1 - left],
		[x2 - x1, right - x1],
		[y1 - y2, y1 - top],
		[y2 - y1, bottom - y1],
	] as const;
	for (const [slope, distance] of edges) {
		if (slope === 0) {
			if (distance < 0) return undefined;
		} else if (slope < 0) from = Math.max(from, distance / slope);
		else to = Math.min(to, distance / slope);
	}

	if (from > to) return undefined;
	return [x1 + from * (x2 - x1), y1 + from * (y2 - y1), x1 + to * (x2 - x1), y1 + to * (y2 - y1)];
}
