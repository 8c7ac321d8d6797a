import {cellWidth} from './fitCells.ts';

/** Pixels of each figure, six rows; two rows make one line of half blocks. */
const figures: Readonly<Record<string, string>> = {
	'0': '.##. #..# #..# #..# #..# .##.',
	'1': '..#. .##. ..#. ..#. ..#. .###',
	'2': '###. ...# ...# .##. #... ####',
	'3': '###. ...# .##. ...# ...# ###.',
	'4': '#..# #..# #### ...# ...# ...#',
	'5': '#### #... ###. ...# ...# ###.',
	'6': '.##. #... ###. #..# #..# .##.',
	'7': '#### ...# ..#. ..#. .#.. .#..',
	'8': '.##. #..# .##. #..# #..# .##.',
	'9': '.##. #..# #..# .### ...# .##.',
	'.': '. . . . . #',
	',': '. . . . # #',
	'-': '... ... ### ... ... ...',
	'+': '... .#. ### .#. ... ...',
	'/': '..# ..# .#. .#. #.. #..',
	'′': '# # . . . .',
	'″': '#.# #.# ... ... ... ...',
	' ': '.. .. .. .. .. ..',
};
const alike: Readonly<Record<string, string>> = {'−': '-', '–': '-', "'": '′', '’': '′', '"': '″', '”': '″'};
const blocks = [' ', '▀', '▄', '█'] as const;

/**
A value in figures three lines tall, to be read at arm's length.

What follows the figures, such as a unit, stands beside them on the last line. Figures after a word stay small.

@returns Three lines of at most `columns` cells; `undefined` where the text does not start with a figure or sign, or
is too wide: then plain text is the better choice.
*/
export function largeLines(text: string, columns: number): readonly string[] | undefined {
	const characters = [...text.trim()].map(character => alike[character] ?? character);
	const end = characters.findIndex(character => !(character in figures));
	const large = characters
		.slice(0, end < 0 ? characters.length : end)
		.join('')
		.trimEnd();
	const rest = characters.slice(large.length).join('').trim();
	if (!/\d/.test(large) || /\d/.test(rest)) return undefined;
	const rows = [0, 1, 2].map(line =>
		[...large].map(character => blockLine(figures[character]!, line)).join(' '),
	);
	const lines = rest ? rows.map((row, index) => (index === 2 ? `${row}  ${rest}` : row)) : rows;
	return Math.max(...lines.map(line => cellWidth(line))) > columns ? undefined : lines;
}

function blockLine(figure: string, line: number): string {
	const pixels = figure.split(' ');
	const upper = pixels[2 * line]!;
	const lower = pixels[2 * line + 1]!;
	return [...upper]
		.map((pixel, column) => blocks[(pixel === '#' ? 1 : 0) + (lower[column] === '#' ? 2 : 0)])
		.join('');
}
