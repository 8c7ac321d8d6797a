import {Box, useIsScreenReaderEnabled} from 'ink';
import {useMemo} from 'react';
import {largeLines} from '../../report/largeLines.ts';
import {wrap} from '../../report/wrap.ts';
import {footerOf} from '../keys/binding.ts';
import {footerText} from '../parts/footerText.ts';
import {type Line, Lines} from '../parts/lines.tsx';
import type {WindowSize} from '../terminal/useWindowSize.ts';
import {modeOf, walkKeymap} from '../walk/keymap.ts';
import {type WalkLayout, walkLayout} from '../walk/layout.ts';
import {keysOf, type Page} from '../walk/page.ts';
import {pageOf} from '../walk/pages.ts';
import {questionLines} from '../walk/questionLines.ts';
import {adviceOn} from '../walk/solution.ts';
import {currentPrompt} from '../walk/state.ts';
import {promptsFor, walkRound} from '../walk/stops.ts';
import type {WalkScreen} from './screen.ts';
import {troubleLines} from './troubleLines.ts';
import {WalkBody} from './walkBody.tsx';
import {walkHead} from './walkHead.ts';
import {WalkPlan} from './walkPlan.tsx';

type Props = {readonly screen: WalkScreen; readonly size: WindowSize};

/** Cells kept free beside large figures for the unit and the values so far. */
const besideFigures = 40;
/** Rows of a screen with a question and a table of sixteen channels. */
const mostRows = 33;

/** The walk: where one stands, the question, the settings so far, the keys. */
export function WalkView({screen, size}: Props) {
	const isSpoken = useIsScreenReaderEnabled();
	const {columns, rows} = size;
	const {state} = screen;
	const prompt = currentPrompt(walkRound, state);
	const layout = useMemo(() => walkLayout(columns, rows), [columns, rows]);
	const isTiny = layout.kind === 'tiny';
	const head =
		layout.height < 3 ? [] : walkHead(screen, columns, isSpoken ? 'spoken' : isTiny ? 'title' : 'full');
	const page = prompt.kind === 'page' && !screen.trouble ? pageOf(prompt.id) : undefined;
	const pageState = page && (screen.page?.id === prompt.id ? screen.page.state : page.start(state.subject));
	const footer = isTiny ? layout.hidden : footerText(footerKeys(screen, page, pageState), columns);
	// A page may fill the screen. A question needs less, and every cell costs time at every key.
	const whole = page || state.isPlanShown ? layout.height : Math.min(layout.height, mostRows);
	const footerLines = whole < 2 ? [] : [{text: footer, style: 'quiet' as const}];
	const height = Math.max(1, whole - head.length - footerLines.length);
	const help =
		page && state.isHelpShown
			? wrap(prompt.explain, columns, '  · ')
					.map((text): Line => ({text}))
					.slice(0, height - 1)
			: [];
	return (
		<Box flexDirection="column" width={columns}>
			<Lines lines={head} columns={columns} />
			<Box flexDirection="column" height={isSpoken ? undefined : height}>
				{state.isPlanShown && !screen.trouble ? (
					<WalkPlan profile={state.subject} columns={columns} rows={height} />
				) : page && !state.isTableShown ? (
					<>
						<Lines lines={help} columns={columns} />
						<page.view
							profile={state.subject}
							state={pageState}
							columns={columns}
							height={height - help.length}
						/>
					</>
				) : (
					<WalkBody
						profile={state.subject}
						previous={screen.previous}
						row={prompt.row}
						layout={layout}
						lines={bodyLines(screen, layout, isSpoken)}
						columns={columns}
						height={height}
						table={tableOf(screen, isTiny, isSpoken)}
					/>
				)}
			</Box>
			<Lines lines={footerLines} columns={columns} />
		</Box>
	);
}

function tableOf(
	{state, trouble}: WalkScreen,
	isTiny: boolean,
	isSpoken: boolean,
): 'none' | 'with' | 'alone' {
	if (isTiny || trouble) return 'none';
	if (state.isTableShown) return 'alone';
	return isSpoken ? 'none' : 'with';
}

function bodyLines(screen: WalkScreen, layout: WalkLayout, isSpoken: boolean): Line[] {
	const {state, trouble} = screen;
	const columns = layout.questionColumns;
	if (trouble) return troubleLines(trouble, columns);
	const prompt = currentPrompt(walkRound, state);
	const isTall = layout.isTall && !isSpoken;
	const justTaken = promptsFor(state.subject).find(({id}) => id === state.latest)?.row;
	const lines = questionLines(prompt, state, {
		columns,
		draw: isTall ? text => largeLines(text, columns - besideFigures) : undefined,
		advice: adviceOn(state.subject, justTaken),
		isBrief: layout.kind === 'tiny',
	});
	return isTall ? [{text: ''}, ...lines] : lines;
}

/** The keys of a page come first; the walk's own follow where the page has no other use for them. */
function footerKeys(screen: WalkScreen, page: Page<unknown> | undefined, pageState: unknown) {
	const {state, trouble} = screen;
	if (trouble) return [['1 … 4', 'decide']] as const;
	const own = page ? keysOf(page, state.subject, pageState) : [];
	const walk = footerOf(walkKeymap, modeOf(currentPrompt(walkRound, state), state));
	return [...own, ...walk.filter(([key]) => own.every(([other]) => other !== key))];
}
