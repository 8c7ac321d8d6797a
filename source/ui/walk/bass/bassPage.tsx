import {useIsScreenReaderEnabled} from 'ink';
import {memo, useMemo} from 'react';
import type {Profile} from '../../../profile/types.ts';
import {canRecord} from '../../../study/playing/offeredRecording.ts';
import type {Binding} from '../../keys/binding.ts';
import {commandOf, footerOf} from '../../keys/binding.ts';
import type {Press} from '../../keys/press.ts';
import {Lines} from '../../parts/lines.tsx';
import {scrolled} from '../../parts/scrolled.ts';
import {situationOf} from '../dialIn/situation.ts';
import {type HubPlan, type HubState, hubKeys, hubStart, pressHub} from '../hub.ts';
import type {Page, PageKeys, PagePress} from '../page.ts';
import {bassPrompts} from './bass.ts';
import {blendOf} from './blendOf.ts';
import {bassLines} from './lines.ts';
import {isPairChosen, isPairToDialIn} from './pairPrompts.ts';
import {afterRecording, recordedOf} from './recorded.ts';
import {bassWhyLines, hasReasons} from './why.ts';

type Props = {
	readonly profile: Profile;
	readonly state: HubState;
	readonly columns: number;
	readonly height: number;
};

const Bass = memo(function Bass({profile, state, columns, height}: Props) {
	const isPlain = useIsScreenReaderEnabled();
	const lines = useMemo(
		() => [
			...(state.isWhyShown ? bassWhyLines(profile, columns) : []),
			...bassLines(profile, columns, isPlain),
		],
		[profile, columns, isPlain, state.isWhyShown],
	);
	return <Lines columns={columns} lines={isPlain ? lines : scrolled(lines, state.from, height)} />;
});

/** Open tones first; then, where they change the settings, the stop that asks to type them in. */
export function bassPlan(profile: Profile): HubPlan {
	const questions = bassPrompts(profile).filter(({kind}) => kind !== 'page');
	const skipped = profile.walk?.skipped ?? [];
	const open = questions.find(({id, isAnswered}) => !isAnswered && !skipped.includes(id));
	const isRead = questions.some(({kind, isAnswered}) => kind === 'reading' && isAnswered);
	const changes = isRead && situationOf(profile).kind === 'stale' ? 'dialIn' : undefined;
	const recorded = recordedOf(profile).kind !== 'none' && !isRead;
	const next = afterRecording(profile) === 'dialIn' ? 'dialIn' : undefined;
	const waits = isPairToDialIn(blendOf(profile)) ? changes : undefined;
	return {
		goOn: recorded ? next : (waits ?? open?.id ?? changes),
		first: questions[0]?.id,
		lines: bassLines(profile, 80).length,
	};
}

type BassCommand = 'record' | 'meter';
const whyKeymap: ReadonlyArray<Binding<'why', 'told'>> = [
	{presses: ['w'], command: 'why', modes: ['told'], shown: ['w', 'why']},
];
/** `choose`: nothing is begun; `verify`: a recording is due; `begun`: Enter goes on with what was begun. */
type BassMode = 'choose' | 'verify' | 'begun';

const keymap: ReadonlyArray<Binding<BassCommand, BassMode>> = [
	{presses: ['enter', 'r'], command: 'record', modes: ['choose', 'verify'], shown: ['Enter', 'record']},
	{presses: ['r'], command: 'record', modes: ['begun'], shown: ['r', 'record']},
	{presses: ['m'], command: 'meter', modes: ['choose', 'verify', 'begun'], shown: ['m', 'with the meter']},
];

function bassMode(profile: Profile): BassMode | undefined {
	const result = blendOf(profile);
	if (result.status === 'nothing' || !canRecord(profile)) return undefined;
	if (recordedOf(profile).kind !== 'none') return afterRecording(profile) === 'hear' ? 'verify' : 'begun';
	const isBegun =
		isPairChosen(profile, result) || result.blocks.some(({steps}) => steps.some(({isTaken}) => isTaken));
	return isBegun || profile.walk?.blendWay !== undefined ? 'begun' : 'choose';
}

function pressBass(profile: Profile, state: HubState, press: Press): PagePress<HubState> {
	if (commandOf(whyKeymap, 'told', press) && hasReasons(profile))
		return {kind: 'state', state: {from: 0, isWhyShown: !state.isWhyShown}};
	const mode = bassMode(profile);
	switch (mode && commandOf(keymap, mode, press)) {
		case 'record':
			return {kind: 'hear', round: 'first'};
		case 'meter':
			return {kind: 'go', promptId: 'bass:set'};
		default:
			return pressHub(state, press, bassPlan, profile);
	}
}

function keysOf(profile: Profile): PageKeys {
	const mode = bassMode(profile);
	const why = hasReasons(profile) ? footerOf(whyKeymap, 'told') : [];
	if (!mode) return [...hubKeys, ...why];
	const own = [...footerOf(keymap, mode), ...why];
	return [...own, ...hubKeys.filter(([key]) => own.every(([other]) => other !== key))];
}

/** The stop Bass: what the tones through the crossover told, and what to do next. */
export const bassPage: Page<HubState> = {
	start: () => hubStart,
	press: pressBass,
	keys: keysOf,
	view: props => <Bass {...props} />,
};
