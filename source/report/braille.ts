import {clipSegment} from './clipSegment.ts';
import {cellWidth} from './fitCells.ts';

/** Runs of dots drawn and left out, in turn. A line without one is solid. */
export type DotPattern = readonly number[];

/**
A drawing area of braille cells, two dots wide and four high each. A terminal's cell is about twice as high as
wide, so a dot is about square. Dots count from the top left; everything outside is clipped, nothing throws.
*/
export type BrailleCanvas = {
	readonly columns: number;
	readonly rows: number;
	readonly dotColumns: number;
	readonly dotRows: number;
	dot(x: number, y: number): void;
	line(x1: number, y1: number, x2: number, y2: number, pattern?: DotPattern): void;
	/** Joined lines; the pattern runs on across the joints. */
	path(points: ReadonlyArray<readonly [x: number, y: number]>, pattern?: DotPattern): void;
	/** Half axes in dots, rotated counter-clockwise as seen on the screen, degrees. A circle has equal half axes. */
	ellipse(x: number, y: number, radiusX: number, radiusY: number, angleDegrees?: number): void;
	/** Text over the dots, from a cell on; what does not fit is left out. */
	text(column: number, row: number, text: string): void;
	/** Number of dots in a run of cells; infinite where a text stands or the area ends. */
	weight(column: number, row: number, cells: number): number;
	/** One string a row, each exactly `columns` cells wide. */
	lines(): string[];
};

// Bits of the dots of a cell, [row][column]. @see The Unicode Standard, block Braille Patterns (U+2800).
const dotBits = [
	[0x01, 0x08],
	[0x02, 0x10],
	[0x04, 0x20],
	[0x40, 0x80],
] as const;

const segmenter = new Intl.Segmenter('en', {granularity: 'grapheme'});

/** @throws {RangeError} If a size is not a whole number from 0 to 1000. */
export function brailleCanvas(columns: number, rows: number): BrailleCanvas {
	for (const [name, value] of Object.entries({columns, rows})) {
		if (!Number.isInteger(value) || value < 0 || value > 1000)
			throw new RangeError(`${name} must be a whole number from 0 to 1000, got ${value}`);
	}

	const dotColumns = columns * 2;
	const dotRows = rows * 4;
	const cells = new Uint8Array(columns * rows);
	const texts = new Map<number, string>();

	const dot = (x: number, y: number) => {
		const dotX = Math.round(x);
		const dotY = Math.round(y);
		if (!(dotX >= 0 && dotX < dotColumns && dotY >= 0 && dotY < dotRows)) return;
		cells[(dotY >> 2) * columns + (dotX >> 1)]! |= dotBits[dotY & 3]![(dotX & 1) as 0 | 1];
	};

	/** Draws one segment and returns how many dots of the pattern it used up. */
	const segment = (ends: readonly [number, number, number, number], pattern?: DotPattern, start = 0) => {
		if (!ends.every(value => Number.isFinite(value))) return start;
		const [x1, y1, x2, y2] = ends;
		const whole = Math.max(Math.abs(x2 - x1), Math.abs(y2 - y1));
		const clipped = clipSegment(ends, [-0.5, -0.5, dotColumns - 0.5, dotRows - 0.5]);
		if (!clipped) return start + whole;
		const [fromX, fromY, toX, toY] = clipped;
		const skipped = Math.max(Math.abs(fromX - x1), Math.abs(fromY - y1));
		const steps = Math.ceil(Math.max(Math.abs(toX - fromX), Math.abs(toY - fromY)));
		for (let step = 0; step <= steps; step++) {
			const share = steps === 0 ? 0 : step / steps;
			if (isDrawn(start + skipped + step, pattern))
				dot(fromX + share * (toX - fromX), fromY + share * (toY - fromY));
		}

		return start + whole;
	};

	const put = (at: number, character: string, width: number) => {
		// Half of a wide character that is written over cannot stay.
		if (texts.get(at) === '') texts.set(at - 1, ' ');
		if (texts.get(at + width) === '') texts.set(at + width, ' ');
		texts.set(at, character);
		for (let more = 1; more < width; more++) texts.set(at + more, '');
	};

	const path = (points: ReadonlyArray<readonly [number, number]>, pattern?: DotPattern) => {
		let start = 0;
		for (const [index, [x, y]] of points.entries()) {
			const before = points[index - 1];
			if (before) start = segment([before[0], before[1], x, y], pattern, start);
			else if (points.length === 1) dot(x, y);
		}
	};

	return {
		columns,
		rows,
		dotColumns,
		dotRows,
		dot,
		path,
		line(x1, y1, x2, y2, pattern) {
			segment([x1, y1, x2, y2], pattern);
		},
		ellipse(x, y, radiusX, radiusY, angleDegrees = 0) {
			path(ellipsePoints(x, y, radiusX, radiusY, angleDegrees));
		},
		text(column, row, text) {
			if (!(row >= 0 && row < rows)) return;
			let at = column;
			for (const {segment: character} of segmenter.segment(text)) {
				const width = cellWidth(character);
				if (width > 0 && at >= 0 && at + width <= columns) put(row * columns + at, character, width);
				at += width;
			}
		},
		weight(column, row, width) {
			if (row < 0 || row >= rows || column < 0 || column + width > columns) return Infinity;
			let sum = 0;
			for (let at = row * columns + column; at < row * columns + column + width; at++) {
				if (texts.has(at)) return Infinity;
				sum += bitCount(cells[at]!);
			}

			return sum;
		},
		lines: () =>
			Array.from({length: rows}, (_, row) => {
				let line = '';
				for (let at = row * columns; at < (row + 1) * columns; at++) {
					const bits = cells[at]!;
					line += texts.get(at) ?? (bits === 0 ? ' ' : String.fromCodePoint(0x28_00 + bits));
				}

				return line;
			}),
	};
}

function isDrawn(position: number, pattern?: DotPattern): boolean {
	const period = pattern?.reduce((sum, run) => sum + run, 0) ?? 0;
	if (!pattern || !(period > 0)) return true;
	let rest = Math.floor(position) % period;
	for (const [index, run] of pattern.entries()) {
		if (rest < run) return index % 2 === 0;
		rest -= run;
	}

	return true;
}

function ellipsePoints(x: number, y: number, radiusX: number, radiusY: number, angleDegrees: number) {
	// A step of about one dot along the larger radius; more would draw the same dots again.
	const count = Math.min(720, Math.max(12, Math.ceil(2 * Math.PI * Math.max(radiusX, radiusY))));
	const cosine = Math.cos((angleDegrees * Math.PI) / 180);
	const sine = Math.sin((angleDegrees * Math.PI) / 180);
	return Array.from({length: count + 1}, (_, index): [number, number] => {
		const angle = (2 * Math.PI * index) / count;
		const along = radiusX * Math.cos(angle);
		const across = radiusY * Math.sin(angle);
		// The screen's y runs down, so the rotation's sign is turned.
		return [x + along * cosine - across * sine, y - (along * sine + across * cosine)];
	});
}

function bitCount(bits: number): number {
	let count = 0;
	for (let rest = bits; rest > 0; rest &= rest - 1) count++;
	return count;
}
