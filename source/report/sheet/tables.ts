import type {DialRow, SheetContent} from './content.ts';

export type SheetTable = {
	readonly id: 'receiver' | 'processor' | 'places' | 'cables';
	readonly caption: string;
	readonly heads: readonly string[];
	readonly rows: ReadonlyArray<readonly string[]>;
};

const dialCells = ({name, crossover, timing, trim, polarity}: DialRow) => [
	name,
	crossover,
	timing,
	trim,
	polarity,
];

/** The tables of the page in the order in which they are used; without empty tables and empty columns. */
export function sheetTables(content: SheetContent): SheetTable[] {
	const tables: SheetTable[] = [
		{
			id: 'receiver',
			caption: 'Type into the receiver',
			heads: ['Channel', 'Crossover', content.timingHeading, 'Trim dB', 'Polarity'],
			rows: content.receiver.map(dialCells),
		},
		{
			id: 'processor',
			caption: 'Then into the bass processor',
			heads: ['Output', 'Crossover', 'Delay', 'Gain dB', 'Polarity'],
			rows: content.processor.map(dialCells),
		},
		{
			id: 'places',
			caption: 'Where it stands',
			heads: ['What', 'From the wall', 'From the wall', 'Height', 'To the seat'],
			rows: content.places.map(row => [row.name, row.acrossFrom, row.alongFrom, row.height, row.toSeat]),
		},
		{
			id: 'cables',
			caption: 'Cables',
			heads: ['Label', 'From', 'To', 'Length', 'Conductor'],
			rows: content.cables.map(row => [row.label, row.from, row.to, row.length, row.conductor]),
		},
	];
	return tables.filter(({rows}) => rows.length > 0).map(withoutEmptyColumns);
}

function withoutEmptyColumns(table: SheetTable): SheetTable {
	const used = table.heads.map((_, column) => table.rows.some(row => row[column]));
	const keep = (cells: readonly string[]) => cells.filter((_, column) => used[column]);
	return {...table, heads: keep(table.heads), rows: table.rows.map(keep)};
}
