import {Box, Text, useIsScreenReaderEnabled} from 'ink';
import {Table} from 'ink-table';
import {memo, type PropsWithChildren, useMemo} from 'react';
import {fitCells} from '../../report/fitCells.ts';
import type {SolutionRow} from '../../report/solutionRows.ts';
import {columnGap, type LiveColumn, layoutLiveTable, markCells} from './liveTableLayout.ts';

type Props = {
	readonly rows: readonly SolutionRow[];
	/** Title of the timing column: a delay, or the distance to enter. */
	readonly timingTitle?: 'delay' | 'to enter';
	/** Row that the present question is about; it stays in view and is marked. */
	readonly currentId?: string;
	/** Cells and lines available. */
	readonly columns: number;
	readonly height: number;
};

const currentMark = '›';

/** The settings table that moves as readings come in. Fits any size and says what it hides. */
export const LiveTable = memo(function LiveTable(props: Props) {
	const {rows, timingTitle = 'delay', currentId, columns, height} = props;
	const isScreenReader = useIsScreenReaderEnabled();
	const layout = useMemo(
		() => layoutLiveTable(rows, timingTitle, columns, height, currentId),
		[rows, timingTitle, columns, height, currentId],
	);
	if (rows.length === 0) return <Text dimColor>No settings yet. They appear with the first readings.</Text>;
	if (height < 2) return null;
	const shown = rows.slice(layout.from, layout.to);
	if (isScreenReader) {
		return (
			<Box flexDirection="column" aria-role="list">
				{shown.map(row => (
					<Text key={row.id}>{spokenRow(row, layout.columns)}</Text>
				))}
			</Box>
		);
	}

	const heading = headingLine(layout.columns);
	return (
		<Box flexDirection="column">
			<Table
				data={shown.map(row => ({[heading]: tableLine(row, layout.columns, row.id === currentId)}))}
				{...parts}
			/>
			{layout.hidden && <Text dimColor>{fitCells(`  ${layout.hidden}`, columns).trimEnd()}</Text>}
		</Box>
	);
});

/** One row in words: `Front left: distance 2.87 m, delay 3.2 ms, …`. */
export function spokenRow(row: SolutionRow, columns: readonly LiveColumn[]): string {
	const values = columns
		.filter(({field}) => field !== 'name' && row[field] !== '')
		.map(({field, title}) => (field === 'remark' ? row.remark : `${title} ${row[field]}`));
	return `${row.name}: ${values.join(', ') || 'nothing yet'}`;
}

function headingLine(columns: readonly LiveColumn[]): string {
	return rowText(
		columns.map(column => [column, column.title]),
		'',
	);
}

function tableLine(row: SolutionRow, columns: readonly LiveColumn[], isCurrent: boolean): string {
	return rowText(
		columns.map(column => [column, row[column.field]]),
		isCurrent ? currentMark : '',
	);
}

function rowText(cells: ReadonlyArray<readonly [LiveColumn, string]>, mark: string): string {
	const texts = cells.map(([column, text]) => fitCells(text, column.cells, column.align));
	return (fitCells(mark, markCells) + texts.join(' '.repeat(columnGap))).trimEnd();
}

// The table counts characters, not cells, frames every row and draws each cell as an element of its own, which
// costs more than half of a frame at sixteen rows. So each row is one cell, fitted here, without a frame.
const textOf = (children: unknown) =>
	String(children ?? '')
		.trimEnd()
		.slice(1);
const parts = {
	header: ({children}: PropsWithChildren) => <Text dimColor>{textOf(children)}</Text>,
	cell({children}: PropsWithChildren<{column: number}>) {
		const text = textOf(children);
		return <Text bold={text.startsWith(currentMark)}>{text}</Text>;
	},
	skeleton: () => null,
};
