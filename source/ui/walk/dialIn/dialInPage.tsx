import {useIsScreenReaderEnabled} from 'ink';
import {memo} from 'react';
import type {Profile} from '../../../profile/types.ts';
import {footerOf} from '../../keys/binding.ts';
import {Lines} from '../../parts/lines.tsx';
import type {Page} from '../page.ts';
import {pagePrompt} from '../prompt/pagePrompt.ts';
import type {Prompt} from '../prompt/prompt.ts';
import type {Stop} from '../stop.ts';
import {dialInKeymap} from './keymap.ts';
import {limitPrompts} from './limits.ts';
import {dialInLines} from './lines.ts';
import {type DialInState, dialInMode, dialInStart, pressDialIn} from './press.ts';
import {dialledIn} from './progress.ts';
import {situationOf} from './situation.ts';

type Props = {
	readonly profile: Profile;
	readonly state: DialInState;
	readonly columns: number;
	readonly height: number;
};

const DialIn = memo(function DialIn({profile, state, columns, height}: Props) {
	const isPlain = useIsScreenReaderEnabled();
	return <Lines lines={dialInLines(profile, state, {columns, height, isPlain})} columns={columns} />;
});

/** The stop for typing the settings into the boxes: one at a time, large, in the box's own unit and step. */
export const dialInPage: Page<DialInState> = {
	start: () => dialInStart,
	press: pressDialIn,
	keys(profile, state) {
		const situation = situationOf(profile);
		const mode = dialInMode(situation, state);
		const isDone = situation.kind === 'decided' && situation.items.every(item => item.isDone);
		const keys = mode ? footerOf(dialInKeymap, mode) : [];
		return keys.map(([key, does]) => [key, isDone && key === 'Enter' ? 'go on' : does] as const);
	},
	view: props => <DialIn {...props} />,
};

function dialInPrompts(profile: Profile): Prompt<Profile>[] {
	return [
		...limitPrompts(profile),
		pagePrompt(
			'dialIn',
			'Type the settings in',
			'As the boxes show it: Enter ticks a page that is typed in, Space a row. w tells why, l shows one channel at a time.',
		),
	];
}

/** Typing the settings into the boxes. */
export const dialInStop = {
	id: 'dialIn',
	name: 'Dial-in',
	prompts: dialInPrompts,
	page: dialInPage,
	progress: dialledIn,
	after: 'bass',
} as const satisfies Stop<DialInState>;
