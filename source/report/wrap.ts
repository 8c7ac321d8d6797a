import {cellWidth} from './fitCells.ts';

/**
Breaks a sentence into lines no wider than asked for, at blanks; a word that is wider stands alone.

@param text - Prose; runs of white space count as one blank.
@param width - Cells at hand for the whole line with its indent.
@param indent - Put before the first line; the others get as many blanks.
*/
export function wrap(text: string, width: number, indent = ''): string[] {
	const free = Math.max(1, width - cellWidth(indent));
	const lines: string[] = [];
	let line = '';
	for (const word of text.split(/\s+/).filter(part => part !== '')) {
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
