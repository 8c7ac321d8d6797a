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
	const key = layout.columns.map(({title, cells}) => `${title}${cells}`).join(' ');
	// The parts are fixed for as long as the columns are: the table keeps those of its first drawing.
	// biome-ignore lint/correctness/useExhaustiveDependencies: the key stands for the columns.
	const parts = useMemo(() => tableParts(layout.columns), [key]);
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

	return (
		<Box flexDirection="column">
			<Table
				key={key}
				data={shown.map(row => tableRow(row, layout.columns, row.id === currentId))}
				columns={layout.columns.map(({title, align}) => ({key: title, align}))}
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

function tableRow(row: SolutionRow, columns: readonly LiveColumn[], isCurrent: boolean) {
	const mark = isCurrent ? `${currentMark} ` : '  ';
	return Object.fromEntries(
		columns.map(({field, title}) => [title, field === 'name' ? mark + row.name : row[field]]),
	);
}

/** The table's own frame counts characters, not cells, and takes two lines a row: these parts do without it. */
function tableParts(columns: readonly LiveColumn[]) {
	const last = columns.length - 1;
	const inColumn = (text: string, column: number) => {
		const {cells, align} = columns[column]!;
		const width = column === 0 ? cells + markCells : cells;
		const isMarked = column === 0 && text.startsWith(currentMark);
		const content = column === 0 && !isMarked ? `  ${text}` : text;
		return fitCells(content, width, align) + (column === last ? '' : ' '.repeat(columnGap));
	};

	const textOf = (children: unknown) => String(children ?? '').trim();
	return {
		header({children}: PropsWithChildren) {
			const title = textOf(children);
			const column = columns.findIndex(candidate => candidate.title === title);
			return (
				<Text dimColor wrap="truncate">
					{inColumn(title, column)}
				</Text>
			);
		},
		cell({column, children}: PropsWithChildren<{column: number}>) {
			const text = textOf(children);
			return (
				<Text wrap="truncate" bold={text.startsWith(currentMark)}>
					{inColumn(text, column)}
				</Text>
			);
		},
		skeleton: () => null,
	};
}
