import {wrap} from '../../../report/wrap.ts';
import {footerOf} from '../../keys/binding.ts';
import {Lines, type ScreenLine} from '../../parts/lines.tsx';
import {scrolled} from '../../parts/scrolled.ts';
import type {Page} from '../page.ts';
import {pagePrompt} from '../prompt/pagePrompt.ts';
import type {Stop} from '../stop.ts';
import {type KeepState, keepKeymap, keepMode, keepStart, pressKeep, sheetScreenLines} from './keepState.ts';
import {keepLines} from './lines.ts';

import {ResponseView, responseCount} from './response.tsx';

/** What the file holds, what comes next and what was left out; and the page for the cabinet door. */
export const keepPage: Page<KeepState> = {
	start: () => keepStart,
	press: pressKeep,
	keys: (profile, state) =>
		footerOf(keepKeymap, keepMode(state)).filter(
			([, does]) => does !== 'response' || responseCount(profile) > 0,
		),
	view: ({profile, state, columns, height, walk}) => {
		if (state.responseAt !== undefined)
			return <ResponseView profile={profile} at={state.responseAt} columns={columns} height={height} />;
		const said = state.said.flatMap(({isGood, text}) =>
			wrap(`${isGood ? '✓' : '!'} ${text}`, columns, '  ').map(
				(line): ScreenLine => ({text: line, style: isGood ? 'good' : 'trouble'}),
			),
		);
		const body: ScreenLine[] = state.isSheetShown
			? sheetScreenLines(profile, columns - 2).map(text => ({text: `  ${text}`}))
			: keepLines(profile, columns, walk);
		const room = Math.max(1, height - said.length);
		return <Lines lines={[...scrolled(body, state.from, room), ...said]} columns={columns} />;
	},
};

/** What is in the file, and what was put off. */
export const keepStop = {
	id: 'keep',
	name: 'Keep',
	prompts: () => [pagePrompt('keep', 'Kept', 'What is in the file, and what was put off.')],
	page: keepPage,
} as const satisfies Stop<KeepState>;
