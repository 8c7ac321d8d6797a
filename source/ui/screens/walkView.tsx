import {Box, Text, useIsScreenReaderEnabled} from 'ink';
import {useMemo} from 'react';
import {fitCells} from '../../report/fitCells.ts';
import {largeLines} from '../../report/largeLines.ts';
import {footerOf} from '../keys/binding.ts';
import {footerText} from '../parts/footerText.ts';
import {type Line, Lines} from '../parts/lines.tsx';
import {LiveTable} from '../parts/liveTable.tsx';
import {stripText, stripWords} from '../parts/stripText.ts';
import {tapeRule} from '../parts/tapeRule.ts';
import type {WindowSize} from '../terminal/useWindowSize.ts';
import {modeOf, walkKeymap} from '../walk/keymap.ts';
import {walkLayout} from '../walk/layout.ts';
import {pageOf} from '../walk/pages.ts';
import {questionLines} from '../walk/questionLines.ts';
import {adviceOn, rowIdOf, rowsOf} from '../walk/solution.ts';
import {currentPrompt} from '../walk/state.ts';
import {promptsFor, statusOf, walkRound} from '../walk/stops.ts';
import type {WalkScreen} from './screen.ts';
import {waysOut} from './trouble.ts';

type Props = {readonly screen: WalkScreen; readonly size: WindowSize};

/** The walk: where one stands, the question, the settings so far, the keys. */
export function WalkView({screen, size}: Props) {
	const isSpoken = useIsScreenReaderEnabled();
	const {state, page: pageState} = screen;
	const {subject} = state;
	const prompt = currentPrompt(walkRound, state);
	const layout = useMemo(() => walkLayout(size.columns, size.rows), [size.columns, size.rows]);
	const rows = useMemo(() => rowsOf(subject, screen.previous), [subject, screen.previous]);
	const head = useMemo(
		() => headLines(screen, layout.kind === 'tiny' || isSpoken, size.columns, isSpoken),
		[screen, layout.kind, size.columns, isSpoken],
	);
	const page = prompt.kind === 'page' ? pageOf(prompt.id) : undefined;
	const footer =
		layout.kind === 'tiny'
			? layout.hidden
			: footerText([...(page?.keys ?? []), ...footerOf(walkKeymap, modeOf(prompt, state))], size.columns);
	const bodyHeight = layout.height - head.length - 1;
	const justTaken = promptsFor(subject).find(({id}) => id === state.latest)?.row;
	const air: Line[] = layout.isTall && !isSpoken ? [{text: ' '}] : [];
	const question = screen.trouble
		? troubleLines(screen.trouble)
		: [
				...air,
				...questionLines(prompt, state, {
					columns: layout.questionColumns,
					draw:
						layout.isTall && !isSpoken ? text => largeLines(text, layout.questionColumns - 40) : undefined,
					advice: adviceOn(subject, justTaken),
				}),
			];
	const isTableOnly = state.isTableShown && layout.kind !== 'tiny' && !screen.trouble;
	const hasTable =
		!isSpoken && layout.kind !== 'tiny' && !page && !(state.isHelpShown && layout.kind === 'narrow');
	const table = (columns: number, height: number) => (
		<LiveTable
			rows={rows}
			timingTitle={subject.receiver?.timing.kind === 'delay' ? 'delay' : 'to enter'}
			currentId={rowIdOf(subject, prompt.row)}
			columns={columns}
			height={height}
		/>
	);
	const shownLines = question.slice(0, Math.max(1, bodyHeight));
	const under = bodyHeight - shownLines.length - 1;
	return (
		<Box flexDirection="column" width={size.columns}>
			<Lines lines={head} />
			{isTableOnly ? (
				<Box height={bodyHeight} flexDirection="column">
					{table(size.columns, bodyHeight)}
				</Box>
			) : page && !screen.trouble && layout.kind !== 'tiny' ? (
				<Box height={bodyHeight} flexDirection="column">
					<page.view
						profile={subject}
						state={pageState?.id === prompt.id ? pageState.state : page.start(subject)}
						columns={size.columns}
						height={bodyHeight}
					/>
				</Box>
			) : layout.kind === 'wide' ? (
				<Box height={bodyHeight}>
					<Box width={layout.questionColumns} flexDirection="column">
						<Lines lines={shownLines} />
					</Box>
					<Box paddingLeft={3} flexDirection="column">
						{hasTable && table(layout.tableColumns, bodyHeight)}
					</Box>
				</Box>
			) : (
				<Box height={isSpoken ? undefined : bodyHeight} flexDirection="column">
					<Lines lines={shownLines} />
					{hasTable && under >= 3 && (
						<>
							<Text dimColor>{'─'.repeat(size.columns)}</Text>
							{table(layout.tableColumns, under)}
						</>
					)}
				</Box>
			)}
			<Text dimColor wrap="truncate">
				{footer}
			</Text>
		</Box>
	);
}

/** Name, place in the round, stops and the tape that shows how far one is. */
function headLines(screen: WalkScreen, isShort: boolean, columns: number, isSpoken: boolean): Line[] {
	const {subject, promptId} = screen.state;
	const prompt = currentPrompt(walkRound, screen.state);
	const own = promptsFor(subject).filter(({stop}) => stop === prompt.stop);
	const at = own.findIndex(({id}) => id === promptId);
	const stops = statusOf(subject);
	const stop = stops.find(({id}) => id === prompt.stop)?.name ?? '';
	const place = own.length > 1 ? `${stop}, ${at + 1} of ${own.length} ` : `${stop} `;
	const unsaved = screen.isUnsaved ? 'NOT ON DISK   ' : '';
	const right = unsaved + place;
	const left = fitCells(` ${subject.name}, ${subject.date}`, Math.max(0, columns - right.length - 1));
	const title: Line = {text: left, after: ` ${right}`};
	if (isSpoken) return [{text: `${subject.name}. ${right}`}, {text: stripWords(stops, prompt.stop)}];
	if (isShort) return [title];
	return [
		title,
		{text: stripText(stops, prompt.stop, columns), style: 'quiet'},
		{
			text: tapeRule(
				own.map(({isAnswered}) => isAnswered),
				Math.max(0, at),
				columns,
			),
			style: 'quiet',
		},
	];
}

function troubleLines(trouble: NonNullable<WalkScreen['trouble']>): Line[] {
	return [
		{text: '  Not saved. Your answers are still here.', style: 'strong'},
		{text: `  ! ${trouble.text}`, style: 'trouble'},
		{text: ''},
		...waysOut(trouble.why).map((way, index) => ({text: `    ${index + 1}  ${way}`})),
	];
}
