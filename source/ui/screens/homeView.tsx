import {Box} from 'ink';
import {cellWidth, fitCells} from '../../report/fitCells.ts';
import {wrap} from '../../report/wrap.ts';
import type {Listed} from '../files.ts';
import {footerOf} from '../keys/binding.ts';
import {footerText} from '../parts/footerText.ts';
import {Lines, type ScreenLine} from '../parts/lines.tsx';
import type {WindowSize} from '../terminal/useWindowSize.ts';
import {homeKeymap} from './home.ts';
import type {HomeScreen} from './screen.ts';

const help =
	'Each line is one arrangement of a room on one day. Enter goes on where its walk stopped. f starts this year’s round from it: first what has moved, all the rest comes along. h shows the room through the years, d moves a profile to a folder of deleted ones. c marks two to compare. A profile that comes with the program is copied first and never changed.';

/** The profiles, newest first, and what can be done with them. */
export function HomeView({screen, size}: {readonly screen: HomeScreen; readonly size: WindowSize}) {
	const height = Math.max(1, size.rows - 1);
	const notes = homeNotes(screen, size.columns);
	const list = listLines(screen, size.columns, Math.max(1, height - 4 - notes.length));
	const lines = [
		{text: ' roomtare', style: 'strong' as const, after: '   profiles, newest first'},
		{text: ' '},
		...list,
		{text: ' '},
		...notes,
	].slice(0, Math.max(1, height - 1));
	return (
		<Box flexDirection="column" width={size.columns}>
			<Box height={height - 1} flexDirection="column">
				<Lines lines={lines} columns={size.columns} />
			</Box>
			<Lines
				lines={[{text: footerText(footerOf(homeKeymap, 'home'), size.columns), style: 'quiet'}]}
				columns={size.columns}
			/>
		</Box>
	);
}

function homeNotes(screen: HomeScreen, columns: number): ScreenLine[] {
	const put = (text: string, style?: ScreenLine['style']) =>
		wrap(text, columns, '  ').map(line => ({text: line, style}));
	const isEmpty = screen.entries.every(({isShipped}) => isShipped);
	const naming: ScreenLine[] =
		screen.renaming === undefined
			? []
			: [
					{text: '  A new name for it. Enter takes it, Esc leaves it as it is.', style: 'quiet'},
					{text: `  ▸ ${screen.renaming}▏`, style: 'value'},
				];
	return [
		...naming,
		...screen.notes.flatMap(({kind, text}) =>
			put(kind === 'no' ? `! ${text}` : text, kind === 'no' ? 'trouble' : undefined),
		),
		...(isEmpty && screen.notes.length === 0
			? put('No profile of yours yet. n makes one; Enter on a demo looks at a copy of it.', 'quiet')
			: []),
		...(screen.isHelpShown ? put(help) : []),
	];
}

/** The list in a window that follows the cursor; what is outside is counted. */
export function listLines(screen: HomeScreen, columns: number, height: number): ScreenLine[] {
	const {entries, cursor, marked} = screen;
	const all: ScreenLine[] = entries.map((entry, index) =>
		entryLine(entry, index === cursor, entry.file === marked, columns),
	);
	all.push({
		text: `${cursor === entries.length ? ' › ' : '   '}New profile`,
		style: cursor === entries.length ? 'value' : undefined,
	});
	if (all.length <= height) return all;
	const room = Math.max(1, height - 1);
	const from = Math.min(Math.max(0, cursor - Math.floor(room / 2)), all.length - room);
	const hidden = [
		from > 0 ? `${from} above` : '',
		from + room < all.length ? `${all.length - from - room} below` : '',
	]
		.filter(Boolean)
		.join(', ');
	return [...all.slice(from, from + room), {text: `   ${hidden}`, style: 'quiet'}];
}

function entryLine(entry: Listed, isChosen: boolean, isMarked: boolean, columns: number): ScreenLine {
	const words = [
		entry.isShipped ? 'demo' : '',
		isMarked ? 'to compare' : '',
		entry.problem ? 'cannot be read' : '',
	]
		.filter(Boolean)
		.join(', ');
	const start = `${isChosen ? ' › ' : '   '}${fitCells(entry.date || '–', 10)}  `;
	const end = words ? `   ${words}` : '';
	const name = fitCells(entry.name, Math.max(4, columns - cellWidth(start) - cellWidth(end) - 1)).trimEnd();
	const text = start + name;
	return {text, style: isChosen ? 'value' : undefined, after: end || undefined};
}
