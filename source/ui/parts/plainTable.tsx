import {Text} from 'ink';
import {Table} from 'ink-table';
import type {PropsWithChildren} from 'react';

type PlainTableProps = {
	readonly titles: readonly string[];
	readonly rows: ReadonlyArray<readonly string[]>;
	/** Titles of columns of figures, set flush right. */
	readonly figures?: readonly string[];
};

/** A table without frames, for what is only read. */
export function PlainTable({titles, rows, figures = []}: PlainTableProps) {
	const data = rows.map(row => Object.fromEntries(titles.map((title, at) => [title, row[at] ?? ''])));
	const columns = titles.map(key => ({
		key,
		align: figures.includes(key) ? ('right' as const) : ('left' as const),
	}));
	return <Table data={data} columns={columns} padding={1} {...parts} />;
}

const parts = {
	header: ({children}: PropsWithChildren) => <Text dimColor>{children}</Text>,
	cell: ({children}: PropsWithChildren<{column: number}>) => <Text>{children}</Text>,
	skeleton: () => null,
};
