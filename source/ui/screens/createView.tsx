import {Box} from 'ink';
import {footerText} from '../parts/footerText.ts';
import {Lines, type ScreenLine} from '../parts/lines.tsx';
import {tapeRule} from '../parts/tapeRule.ts';
import type {WindowSize} from '../terminal/useWindowSize.ts';
import {walkKeys} from '../walk/keymap.ts';
import {walkLayout} from '../walk/layout.ts';
import {questionLines} from '../walk/questionLines.ts';
import {currentPrompt} from '../walk/state.ts';
import {draftRound} from './draft.ts';
import type {CreateScreen} from './screen.ts';

/** The questions before a profile exists. */
export function CreateView({screen, size}: {readonly screen: CreateScreen; readonly size: WindowSize}) {
	const {state} = screen;
	const prompts = draftRound.prompts(state.subject);
	const prompt = currentPrompt(draftRound, state);
	const at = prompts.findIndex(({id}) => id === prompt.id);
	const height = Math.max(1, size.rows - 1);
	const isTiny = walkLayout(size.columns, size.rows).kind === 'tiny';
	const answered = prompts.map(({isAnswered}) => isAnswered);
	const title: ScreenLine = {text: ' A new profile', after: `   ${at + 1} of ${prompts.length}`};
	const tape: ScreenLine = {text: tapeRule(answered, at, size.columns), style: 'quiet'};
	const head = height < 3 ? [] : isTiny ? [title] : [title, tape];
	const keys = walkKeys(prompt, state).filter(([key]) => isOfDraft(key));
	const lines = questionLines(prompt, state, {columns: size.columns, isBrief: isTiny, keys});
	const footer: ScreenLine[] = height < 2 ? [] : [{text: footerText(keys, size.columns), style: 'quiet'}];
	const bodyHeight = Math.max(1, height - head.length - footer.length);
	return (
		<Box flexDirection="column" width={size.columns}>
			<Lines lines={head} columns={size.columns} />
			<Box height={bodyHeight} flexDirection="column">
				<Lines lines={lines.slice(0, bodyHeight)} columns={size.columns} />
			</Box>
			<Lines lines={footer} columns={size.columns} />
		</Box>
	);
}

/** Before a profile exists there is neither a table nor another stop. */
function isOfDraft(key: string): boolean {
	return !['Tab', 'r', 'x', 's', 'p', 'K', 'W', '[ ]', 'PgUp PgDn'].includes(key);
}
