type LabelFrame = {
	readonly left: number;
	readonly top: number;
	readonly right: number;
	readonly bottom: number;
};

/** A name with the left end of its base line, and the line that leads to it where it stands farther off. */
export type PlacedLabel = {
	readonly text: string;
	readonly x: number;
	readonly y: number;
	readonly lead?: {
		readonly fromX: number;
		readonly fromY: number;
		readonly toX: number;
		readonly toY: number;
	};
};

/** Half of the largest symbol and a gap, in drawing units. */
const reach = 17;

const overlap = (a: LabelFrame, b: LabelFrame) =>
	a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
const inside = (inner: LabelFrame, outer: LabelFrame) =>
	inner.left >= outer.left &&
	inner.right <= outer.right &&
	inner.top >= outer.top &&
	inner.bottom <= outer.bottom;

/**
Finds a place for each name beside its symbol: right, left, below or above, the first that covers no symbol and no
other name, else farther below or above with a line to it; where none is free, the first within the frame.

@param symbols - Names with the middle of their symbols, drawing units, y down.
@param frame - The room's walls: names stand within.
@param letterHeight - Height of a line of text.
@returns Left end of each text's base line.
*/
export function labelsBeside(
	symbols: ReadonlyArray<{readonly text: string; readonly x: number; readonly y: number}>,
	frame: LabelFrame,
	letterHeight: number,
): PlacedLabel[] {
	const taken: LabelFrame[] = symbols.map(({x, y}) => ({
		left: x - 13,
		top: y - 13,
		right: x + 13,
		bottom: y + 13,
	}));
	return symbols.map(({text, x, y}) => {
		// Digits and letters of the usual sans faces average a little over half their height.
		const width = text.length * letterHeight * 0.56;
		const candidates: Array<{x: number; y: number; isFar?: boolean; side?: number}> = [
			{x: x + reach, y: y + letterHeight / 3},
			{x: x - reach - width, y: y + letterHeight / 3},
			{x: x - width / 2, y: y + reach + letterHeight * 0.8},
			{x: x - width / 2, y: y - reach - letterHeight * 0.1},
			{x, y: y + reach + letterHeight * 0.8},
			{x: x - width, y: y + reach + letterHeight * 0.8},
			// Farther off: a line leads there.
			...[1.9, 3].flatMap(lines =>
				[0.5, 0.15, 0.85].flatMap(share => [
					{x: x - width * share, y: y + reach + letterHeight * lines, isFar: true, side: 1},
					{x: x - width * share, y: y - reach - letterHeight * (lines - 0.8), isFar: true, side: -1},
				]),
			),
		];
		const boxAt = (at: {readonly x: number; readonly y: number}): LabelFrame => ({
			left: at.x,
			top: at.y - letterHeight * 0.8,
			right: at.x + width,
			bottom: at.y + letterHeight * 0.2,
		});
		const free = candidates.find(at => {
			const box = boxAt(at);
			return inside(box, frame) && !taken.some(other => overlap(box, other));
		});
		const chosen = free ?? candidates.find(at => inside(boxAt(at), frame)) ?? candidates[0]!;
		taken.push(boxAt(chosen));
		if (!chosen.isFar) return {text, x: chosen.x, y: chosen.y};
		const box = boxAt(chosen);
		const isBelow = chosen.side === 1;
		const lead = {
			fromX: x,
			fromY: isBelow ? y + reach - 3 : y - reach + 3,
			toX: Math.min(Math.max(x, box.left), box.right),
			toY: isBelow ? box.top : box.bottom,
		};
		return {text, x: chosen.x, y: chosen.y, lead};
	});
}
