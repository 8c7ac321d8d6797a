import {Box} from 'ink';
import {footerOf} from '../keys/binding.ts';
import {footerText} from '../parts/footerText.ts';
import {Lines} from '../parts/lines.tsx';
import {tapeRule} from '../parts/tapeRule.ts';
import type {WindowSize} from '../terminal/useWindowSize.ts';
import {modeOf, walkKeymap} from '../walk/keymap.ts';
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
	const isTiny = height < 10;
	const head = [
		{text: ' A new profile', after: `   ${at + 1} of ${prompts.length}`},
		...(isTiny
			? []
			: [
					{
						text: tapeRule(
							prompts.map(({isAnswered}) => isAnswered),
							at,
							size.columns,
						),
						style: 'quiet' as const,
					},
				]),
	];
	const keys = footerOf(walkKeymap, modeOf(prompt, state)).filter(
		([key]) => !['Tab', 'r', 'x', 's', '[ ]'].includes(key),
	);
	const lines = questionLines(prompt, state, {columns: size.columns});
	const bodyHeight = Math.max(1, height - head.length - 1);
	return (
		<Box flexDirection="column" width={size.columns}>
			<Lines lines={head} columns={size.columns} />
			<Box height={bodyHeight} flexDirection="column">
				<Lines lines={lines.slice(0, bodyHeight)} columns={size.columns} />
			</Box>
			<Lines lines={[{text: footerText(keys, size.columns), style: 'quiet'}]} columns={size.columns} />
		</Box>
	);
}
