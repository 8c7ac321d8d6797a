import stringWidth from 'string-width';
import {oneCellText} from './oneCellText.ts';

// Made at the first use: it loads tables that most texts never need.
let graphemes: Intl.Segmenter | undefined;

/** Cells that a terminal needs for one line of text; wide characters take two. */
export function cellWidth(text: string): number {
	return oneCellText.test(text) ? text.length : stringWidth(text);
}

/**
One line of text in exactly so many cells: padded with blanks, or cut with an ellipsis.

@param text - One line; wide characters count two cells and are never cut in half.
@param cells - Whole number ≥ 0.
@param align - Where the blanks do not go.
*/
export function fitCells(text: string, cells: number, align: 'left' | 'right' | 'centre' = 'left'): string {
	if (cells <= 0) return '';
	const width = cellWidth(text);
	if (width > cells) return cutCells(text, cells);
	const free = cells - width;
	const before = align === 'left' ? 0 : align === 'right' ? free : Math.floor(free / 2);
	return ' '.repeat(before) + text + ' '.repeat(free - before);
}

function cutCells(text: string, cells: number): string {
	if (oneCellText.test(text)) return `${text.slice(0, cells - 1)}…`;
	graphemes ??= new Intl.Segmenter('en', {granularity: 'grapheme'});
	let kept = '';
	let used = 0;
	for (const {segment} of graphemes.segment(text)) {
		const width = cellWidth(segment);
		if (used + width > cells - 1) break;
		kept += segment;
		used += width;
	}

	return `${kept}…${' '.repeat(cells - used - 1)}`;
}

/**
A text in pieces of at most so many cells, without a mark where it is cut.

@param cells - Whole number ≥ 1; a wide character takes two all the same.
*/
export function splitCells(text: string, cells: number): string[] {
	if (oneCellText.test(text))
		return Array.from({length: Math.ceil(text.length / cells)}, (_, index) =>
			text.slice(index * cells, (index + 1) * cells),
		);
	graphemes ??= new Intl.Segmenter('en', {granularity: 'grapheme'});
	const pieces: string[] = [];
	let piece = '';
	let used = 0;
	for (const {segment} of graphemes.segment(text)) {
		const width = cellWidth(segment);
		if (piece !== '' && used + width > cells) {
			pieces.push(piece);
			piece = '';
			used = 0;
		}

		piece += segment;
		used += width;
	}

	return piece === '' ? pieces : [...pieces, piece];
}
