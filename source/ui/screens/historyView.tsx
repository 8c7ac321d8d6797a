import {Box} from 'ink';
import {useMemo} from 'react';
import {cellWidth} from '../../report/fitCells.ts';
import {driftText, historyRows} from '../../report/history/text.ts';
import {wrap} from '../../report/wrap.ts';
import {footerOf} from '../keys/binding.ts';
import {footerText} from '../parts/footerText.ts';
import {Lines, type ScreenLine} from '../parts/lines.tsx';
import {PlainTable} from '../parts/plainTable.tsx';
import type {WindowSize} from '../terminal/useWindowSize.ts';
import {historyKeymap} from './history.ts';
import type {HistoryScreen} from './screen.ts';

const titles = [
	'channel',
	'distance',
	'level dB',
	'trim dB',
	'trend',
	'drift dB',
	'deepest dip',
	'decay s',
] as const;
/** Shown whatever the profiles hold; what recordings say only where there are any. */
const always = 6;
/** What a narrow window leaves out first. */
const dropped = ['decay s', 'deepest dip', 'trend', 'level dB', 'distance'] as const;

/** The profiles of one room through the years: what each channel read, what was dialled in, and what drifted. */
export function HistoryView({screen, size}: {readonly screen: HistoryScreen; readonly size: WindowSize}) {
	const {history, lengthUnit, from} = screen;
	const {columns} = size;
	const rows = useMemo(() => historyRows(history, lengthUnit), [history, lengthUnit]);
	const shown = useMemo(() => fitting(rows, columns), [rows, columns]);
	const drifts = history.channels.flatMap(channel => {
		const text = driftText(channel);
		return text === undefined
			? []
			: wrap(text, columns, '  ').map((line): ScreenLine => ({text: line, style: 'doubt'}));
	});
	const names = history.profiles.map(({date, name}) => `${date} ${name}`).join(', ');
	const head: ScreenLine[] = [
		{text: ` ${history.room}`, style: 'strong', after: '   oldest to newest'},
		...wrap(names, columns, '  ')
			.slice(0, 4)
			.map((text): ScreenLine => ({text, style: 'quiet'})),
	];
	const height = Math.max(1, size.rows - 2);
	const hidden = titles.filter(title => hasColumn(rows, title) && !shown.includes(title));
	const hiddenLines = (
		hidden.length > 0 ? wrap(`Hidden: no room for ${hidden.join(', ')}.`, columns, '  ') : []
	).map((line): ScreenLine => ({text: line, style: 'quiet'}));
	const below = [...hiddenLines, ...drifts].slice(0, Math.max(0, height - head.length - 4));
	const room = Math.max(1, height - head.length - below.length - 2);
	const start = Math.min(from, Math.max(0, rows.length - room));
	const visible = rows.slice(start, start + room);
	const left = rows.length - visible.length;
	const keys = footerText(footerOf(historyKeymap, 'history'), columns);
	return (
		<Box flexDirection="column" width={columns}>
			<Box height={height} flexDirection="column">
				<Lines lines={head} columns={columns} />
				<PlainTable
					titles={shown}
					rows={visible.map(row => shown.map(title => row[titles.indexOf(title)] ?? ''))}
					figures={['drift dB']}
				/>
				<Lines
					lines={[...(left > 0 ? [{text: `  ${left} more rows`, style: 'quiet' as const}] : []), ...below]}
					columns={columns}
				/>
			</Box>
			<Lines lines={[{text: keys, style: 'quiet'}]} columns={columns} />
		</Box>
	);
}

/** Whether a column is shown where there is room: what recordings say only where there are any. */
function hasColumn(rows: readonly string[][], title: (typeof titles)[number]): boolean {
	const at = titles.indexOf(title);
	return at < always || rows.some(row => row[at] !== '');
}

/** The columns that a width holds. */
function fitting(rows: readonly string[][], columns: number): Array<(typeof titles)[number]> {
	let shown = titles.filter(title => hasColumn(rows, title));
	const cells = () =>
		shown.reduce((sum, title) => {
			const at = titles.indexOf(title);
			return sum + Math.max(cellWidth(title), ...rows.map(row => cellWidth(row[at] ?? ''))) + 2;
		}, 0);
	for (const title of dropped) if (cells() > columns) shown = shown.filter(other => other !== title);
	return shown;
}
