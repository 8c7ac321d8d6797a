import {Box, Text} from 'ink';
import {useMemo} from 'react';
import type {Profile} from '../../profile/types.ts';
import {Lines, type ScreenLine} from '../parts/lines.tsx';
import {LiveTable} from '../parts/liveTable.tsx';
import type {WalkLayout} from '../walk/layout.ts';
import {rowIdOf, rowsOf} from '../walk/solution.ts';
import {WalkPlan} from './walkPlan.tsx';

type Props = {
	readonly profile: Profile;
	readonly previous: Profile | undefined;
	/** Channel or sub that the question is about. */
	readonly row: string | undefined;
	/** Row of the table that its own cursor stands on. */
	readonly cursor: string | undefined;
	readonly layout: WalkLayout;
	readonly lines: readonly ScreenLine[];
	readonly columns: number;
	readonly height: number;
	/** What stands with the question: the settings, or the floor plan. */
	readonly beside: 'settings' | 'plan';
	/** Whether the table is left out, stands with the question, or takes its place. */
	readonly table: 'none' | 'with' | 'alone';
};

/** A table shorter than this tells nothing. */
const leastTable = 3;

/** The question, and the settings so far under it or beside it. */
export function WalkBody(props: Props) {
	const {profile, previous, row, layout, columns, height} = props;
	const rows = useMemo(() => rowsOf(profile, previous), [profile, previous]);
	const rowId = useMemo(() => props.cursor ?? rowIdOf(profile, row), [profile, row, props.cursor]);
	const lines = props.lines.slice(0, height);
	const table = (tableColumns: number, tableHeight: number) =>
		props.beside === 'plan' && props.table !== 'alone' ? (
			<WalkPlan profile={profile} columns={tableColumns} rows={tableHeight} />
		) : (
			<LiveTable
				rows={rows}
				timingTitle={profile.receiver?.timing.kind === 'distance' ? 'to enter' : 'delay'}
				currentId={rowId}
				columns={tableColumns}
				height={tableHeight}
			/>
		);
	if (props.table === 'alone') return table(columns, height);
	if (props.table === 'none') return <Lines lines={lines} columns={columns} />;
	if (layout.kind === 'wide') {
		return (
			<Box>
				<Box width={layout.questionColumns} flexDirection="column" flexShrink={0}>
					<Lines lines={lines} columns={layout.questionColumns} />
				</Box>
				<Box paddingLeft={3} paddingTop={1} flexDirection="column">
					{table(layout.tableColumns, height - 1)}
				</Box>
			</Box>
		);
	}

	// The question keeps its usual height, so that the table stays where it is from one to the next.
	const questionHeight = Math.max(lines.length, layout.usualLines);
	const left = height - questionHeight - 1;
	if (left < leastTable) return <Lines lines={lines} columns={columns} />;
	return (
		<>
			<Box height={questionHeight} flexDirection="column">
				<Lines lines={lines} columns={columns} />
			</Box>
			<Text dimColor>{'─'.repeat(columns)}</Text>
			{table(layout.tableColumns, left)}
		</>
	);
}
