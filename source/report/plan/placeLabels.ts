import type {BrailleCanvas} from '../braille.ts';
import {cellWidth} from '../fitCells.ts';

/** A label and the dot that it belongs to. */
export type LabelWish = {readonly text: string; readonly x: number; readonly y: number};

// Cells from the marked cell to where the label may start; `text` stands for its width. Nearest first.
const offsets: ReadonlyArray<(text: number) => readonly [columns: number, rows: number]> = [
	() => [2, 0],
	text => [-1 - text, 0],
	text => [-Math.floor(text / 2), -1],
	text => [-Math.floor(text / 2), 1],
	() => [1, -1],
	() => [1, 1],
	text => [-text, -1],
	text => [-text, 1],
	text => [-Math.floor(text / 2), -2],
	text => [-Math.floor(text / 2), 2],
	() => [3, -1],
	() => [3, 1],
	text => [-2 - text, -1],
	text => [-2 - text, 1],
	() => [3, 0],
	text => [-2 - text, 0],
	() => [1, -2],
	() => [1, 2],
	text => [-text, -2],
	text => [-text, 2],
];

/** Dots that a place one step farther from the point must save. */
const distanceCost = 1.5;

/**
Writes labels beside their points, never over each other or over another point's mark.

@param marks - Cells that no label may cover, as `column,row`.
@returns The labels that found no place.
*/
export function placeLabels(
	canvas: BrailleCanvas,
	wishes: readonly LabelWish[],
	marks: ReadonlySet<string>,
): string[] {
	const homeless: string[] = [];
	for (const {text, x, y} of wishes) {
		const width = cellWidth(text);
		let best: {column: number; row: number; cost: number} | undefined;
		for (const [index, offset] of offsets.entries()) {
			const [columns, rows] = offset(width);
			const column = Math.floor(x / 2) + columns;
			const row = Math.floor(y / 4) + rows;
			const cost = canvas.weight(column, row, width) + index * distanceCost;
			if (cost >= (best?.cost ?? Infinity) || covers(marks, column, row, width)) continue;
			if (isTaken(canvas, column - 1, row) || isTaken(canvas, column + width, row)) continue;
			best = {column, row, cost};
		}

		if (best) canvas.text(best.column, best.row, text);
		else homeless.push(text);
	}

	return homeless;
}

/** Whether another label stands in the cell; two labels without a blank between them read as one. */
function isTaken(canvas: BrailleCanvas, column: number, row: number): boolean {
	return column >= 0 && column < canvas.columns && canvas.weight(column, row, 1) === Infinity;
}

function covers(marks: ReadonlySet<string>, column: number, row: number, width: number): boolean {
	for (let at = column; at < column + width; at++) if (marks.has(`${at},${row}`)) return true;
	return false;
}
