/** How the walk is laid out in a terminal of a given size. Screens stay one row shorter than the terminal. */
export type WalkLayout = {
	/** `tiny`: the question alone. `narrow`: the table under it. `wide`: the table beside it. */
	readonly kind: 'tiny' | 'narrow' | 'wide';
	/** Rows that may be drawn. */
	readonly height: number;
	readonly questionColumns: number;
	/** Cells for the table, and its rows where they do not hang on the question. */
	readonly tableColumns: number;
	/** Whether figures are drawn three lines tall. */
	readonly isTall: boolean;
	/** Lines that the question takes as a rule; the table starts below them. */
	readonly usualLines: number;
	/** What a small terminal hides, one line; empty where nothing is. */
	readonly hidden: string;
};

const leastColumns = 60;
const leastRows = 16;
const wideColumns = 126;
const tallRows = 22;

/** @param beside - What stands with the question: a plan needs the lines that large figures take. */
export function walkLayout(
	columns: number,
	rows: number,
	beside: 'settings' | 'plan' = 'settings',
): WalkLayout {
	const height = Math.max(1, rows - 1);
	if (columns < leastColumns || rows < leastRows) {
		return {
			kind: 'tiny',
			height,
			questionColumns: columns,
			tableColumns: 0,
			isTall: false,
			usualLines: 1,
			hidden: `Hidden: table, stops, keys (need ${leastColumns}×${leastRows})`,
		};
	}

	const isWide = columns >= wideColumns;
	const isTall = rows >= tallRows && (isWide || beside === 'settings');
	const questionColumns = isWide ? Math.min(64, Math.floor(columns * 0.45)) : columns;
	return {
		kind: isWide ? 'wide' : 'narrow',
		height,
		questionColumns,
		tableColumns: isWide ? columns - questionColumns - 3 : columns,
		isTall,
		usualLines: isTall ? 9 : 6,
		hidden: '',
	};
}
