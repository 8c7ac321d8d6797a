type LabelFrame = {
	readonly left: number;
	readonly top: number;
	readonly right: number;
	readonly bottom: number;
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
other name; where none is free, right.

@param symbols - Names with the middle of their symbols, drawing units, y down.
@param frame - The whole drawing.
@param letterHeight - Height of a line of text.
@returns Left end of each text's base line.
*/
export function labelsBeside(
	symbols: ReadonlyArray<{readonly text: string; readonly x: number; readonly y: number}>,
	frame: LabelFrame,
	letterHeight: number,
): Array<{text: string; x: number; y: number}> {
	const taken: LabelFrame[] = symbols.map(({x, y}) => ({
		left: x - 13,
		top: y - 13,
		right: x + 13,
		bottom: y + 13,
	}));
	return symbols.map(({text, x, y}) => {
		// Digits and letters of the usual sans faces average a little over half their height.
		const width = text.length * letterHeight * 0.56;
		const candidates = [
			{x: x + reach, y: y + letterHeight / 3},
			{x: x - reach - width, y: y + letterHeight / 3},
			{x: x - width / 2, y: y + reach + letterHeight * 0.8},
			{x: x - width / 2, y: y - reach - letterHeight * 0.1},
			{x, y: y + reach + letterHeight * 0.8},
			{x: x - width, y: y + reach + letterHeight * 0.8},
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
		const chosen = free ?? candidates[0]!;
		taken.push(boxAt(chosen));
		return {text, ...chosen};
	});
}
