import {Box, useIsScreenReaderEnabled} from 'ink';
import {useMemo} from 'react';
import {largeLines} from '../../report/largeLines.ts';
import {wrap} from '../../report/wrap.ts';
import {footerText} from '../parts/footerText.ts';
import {Lines, type ScreenLine} from '../parts/lines.tsx';
import type {WindowSize} from '../terminal/useWindowSize.ts';
import {jumpTargets} from '../walk/jumping.ts';
import {walkKeys} from '../walk/keymap.ts';
import {type WalkLayout, walkLayout} from '../walk/layout.ts';
import type {OpenPage, PageKeys} from '../walk/page.ts';
import {keysText, questionLines} from '../walk/questionLines.ts';
import {adviceOn} from '../walk/solution.ts';
import {currentPrompt} from '../walk/state.ts';
import {doorOf, factsOf, promptsFor, stopAt, walkRound} from '../walk/stops.ts';
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
	const {beside = 'settings'} = prompt;
	const layout = useMemo(() => walkLayout(columns, rows, beside), [columns, rows, beside]);
	const isTiny = layout.kind === 'tiny';
	const head =
		layout.height < 3 ? [] : walkHead(screen, columns, isSpoken ? 'spoken' : isTiny ? 'title' : 'full');
	const page = screen.trouble || state.jump ? undefined : pageOf(screen);
	const keys = keysHere(screen, page);
	const footer = isTiny ? layout.hidden : footerText(keys, columns);
	// A page may fill the screen. A question needs less, and every cell costs time at every key.
	const whole = page || state.isPlanShown ? layout.height : Math.min(layout.height, mostRows);
	const footerLines = whole < 2 ? [] : [{text: footer, style: 'quiet' as const}];
	const height = Math.max(1, whole - head.length - footerLines.length);
	const help =
		page && state.isHelpShown
			? [...wrap(prompt.explain, columns, '  · '), ...wrap(keysText(keys), columns, '    ')]
					.map((text): ScreenLine => ({text}))
					.slice(0, height - 1)
			: [];
	return (
		<Box flexDirection="column" width={columns}>
			<Lines lines={head} columns={columns} />
			<Box flexDirection="column" height={isSpoken ? undefined : height}>
				{state.isPlanShown && !screen.trouble ? (
					<WalkPlan profile={state.subject} columns={columns} rows={height} />
				) : page && !state.table ? (
					<>
						<Lines lines={help} columns={columns} />
						{page.view({
							profile: state.subject,
							columns,
							height: height - help.length,
							walk: factsOf(state.subject),
						})}
					</>
				) : (
					<WalkBody
						profile={state.subject}
						previous={screen.previous}
						row={prompt.row}
						cursor={state.table?.row}
						beside={beside}
						layout={layout}
						lines={bodyLines(screen, layout, isSpoken, keys)}
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

/** The page that the screen stands at, as it is open. */
function pageOf({state, page}: WalkScreen): OpenPage | undefined {
	const prompt = currentPrompt(walkRound, state);
	const door = doorOf(prompt);
	return door && (page?.id === prompt.id ? page.open : door(state.subject));
}

function tableOf(
	{state, trouble}: WalkScreen,
	isTiny: boolean,
	isSpoken: boolean,
): 'none' | 'with' | 'alone' {
	if (trouble || state.jump) return 'none';
	if (state.table) return 'alone';
	return isTiny || isSpoken ? 'none' : 'with';
}

function bodyLines(screen: WalkScreen, layout: WalkLayout, isSpoken: boolean, keys: PageKeys): ScreenLine[] {
	const {state, trouble} = screen;
	const columns = layout.questionColumns;
	if (trouble) return troubleLines(trouble, columns);
	const prompt = currentPrompt(walkRound, state);
	const isTall = layout.isTall && !isSpoken;
	const justTaken = promptsFor(state.subject).find(({id}) => id === state.latest)?.row;
	const targets = state.jump ? jumpTargets(walkRound, state) : undefined;
	const lines = questionLines(prompt, state, {
		columns,
		draw: isTall ? text => largeLines(text, columns - besideFigures) : undefined,
		advice: adviceOn(state.subject, justTaken),
		isBrief: layout.kind === 'tiny',
		keys,
		targets: targets?.listed.map(({question, stop}) => ({question, place: stopAt(stop)?.name ?? ''})),
		moreTargets: targets?.more,
	});
	return isTall ? [{text: ''}, ...lines] : lines;
}

/** The keys of a page come first; the walk's own follow where the page has no other use for them. */
function keysHere(screen: WalkScreen, page: OpenPage | undefined): PageKeys {
	const {state, trouble} = screen;
	if (trouble) return [['number, Enter', 'decide']];
	const own = page && !state.table ? page.keys(state.subject) : [];
	const walk = walkKeys(currentPrompt(walkRound, state), state);
	return [...own, ...walk.filter(([key]) => own.every(([other]) => other !== key))];
}
