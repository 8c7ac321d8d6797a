import {cellWidth, splitCells} from './fitCells.ts';

// A number and its unit stand in one line, or the unit is read as the next thing.
const beforeUnit =
	/(?<=^|[\s(])([−+±]?\d[\d.,]*) (?=(?:m|cm|mm|ft|in|dB(?:\([ACZ]\))?|dBFS|ms|s|Hz|kHz|Ω|W|A|%|°C|m\/s|mm²)(?![\p{L}\p{N}]))/gu;
const tie = '\u0000';

/**
Breaks a sentence into lines no wider than asked for, at blanks, and keeps a number with its unit. A word that is wider
goes on in the next line; but a path stays whole, to be copied.

@param text - Prose; runs of white space count as one blank.
@param width - Cells at hand for the whole line with its indent.
@param indent - Put before the first line; the others get as many blanks.
*/
export function wrap(text: string, width: number, indent = ''): string[] {
	const free = Math.max(1, width - cellWidth(indent));
	const lines: string[] = [];
	let line = '';
	const words = text.replace(beforeUnit, `$1${tie}`).split(/\s+/);
	for (const word of words.flatMap(tied => (tied === '' ? [] : breakable(tied.replaceAll(tie, ' '), free)))) {
		if (line !== '' && cellWidth(line) + 1 + cellWidth(word) > free) {
			lines.push(line);
			line = word;
		} else {
			line = line === '' ? word : `${line} ${word}`;
		}
	}

	if (line !== '') lines.push(line);
	const hang = ' '.repeat(cellWidth(indent));
	return lines.map((part, index) => (index === 0 ? indent : hang) + part);
}

function breakable(word: string, free: number): string[] {
	return cellWidth(word) <= free || /[/\\]/.test(word) ? [word] : splitCells(word, free);
}
