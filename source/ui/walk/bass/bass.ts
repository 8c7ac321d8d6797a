import type {MeterReading, Profile} from '../../../profile/types.ts';
import {
	addedText,
	blockSentence,
	howToRead,
	readingSentences,
	stepSentence,
} from '../../../report/said/blend.ts';
import type {BlendResult} from '../../../study/calibration/blend/blendResult.ts';
import type {BlendBlock, BlendStep} from '../../../study/calibration/blend/steps.ts';
import {levelPrompt} from '../meter/levelPrompt.ts';
import {keyOf} from '../meter/meterPrompt.ts';
import {pagePrompt} from '../prompt/pagePrompt.ts';
import type {Prompt} from '../prompt/prompt.ts';
import {actionText} from './actionText.ts';
import {blendOf} from './blendOf.ts';
import {bassSoundPrompt, fileText} from './sound.ts';
import {togetherPrompts} from './together.ts';
import {toneSetOf, toneSetPrompt} from './toneSet.ts';
import {wayPrompt} from './wayPrompt.ts';

const toneCaution =
	'Master down before the tone, then up slowly to about 75 dB. Stop when a cone buzzes or clacks; half a minute at most.';
const stand: readonly string[] = [
	'      ┬   meter on a stand at ear height, C slow;',
	'      │   sound on for 5 s, then take the',
	'     [ ]  mean of the next 5 s',
];

/** What is verified, or promises nothing, asks no more; what was read stays to look at. */
const isClosed = ({status}: BlendResult) => status === 'kept' || status === 'put back' || status === 'stands';

/** The stop Bass: its page, all subs together where that is not known yet, which settings stand, which way, and each reading of it. Without subs only the page. */
export function bassPrompts(profile: Profile): Prompt<Profile>[] {
	const page = pagePrompt<Profile>(
		'bass',
		'Do subs and speakers add up?',
		'Levels through the crossover at a few delays of all subs together tell which one is loudest; noise before and after verifies it.',
	);
	const result = blendOf(profile);
	if (result.status === 'nothing') return [page, ...togetherPrompts(profile)];
	const all = result.blocks.flatMap(block => block.steps);
	const steps = result.blocks.flatMap(block =>
		block.steps
			.filter(({isTaken}) => isTaken || !isClosed(result))
			.map(step => readingPrompt(profile, block, step, fileText(profile, step, all))),
	);
	// What was verified needs no way any more; the questions stay for who looks at them.
	const isDone = isClosed(result) && steps.some(({isAnswered}) => isAnswered);
	const next = all.find(({isTaken}) => !isTaken) ?? all[0];
	const before = [
		toneSetPrompt(profile),
		wayPrompt(profile, result.ways),
		...(next ? [bassSoundPrompt(profile, next)] : []),
	].map(prompt => (isDone ? {...prompt, isAnswered: true} : prompt));
	return [page, ...togetherPrompts(profile), ...before, ...steps];
}

function readingPrompt(
	profile: Profile,
	block: BlendBlock,
	step: BlendStep,
	played: string,
): Prompt<Profile> {
	const {source, seat, signal, added, part} = step;
	const isOwn = (reading: MeterReading) =>
		reading.round === 'first' &&
		reading.seat === seat &&
		keyOf(reading.source) === keyOf(source) &&
		isSameSignal(reading.signal, signal) &&
		Math.abs((reading.addedDelayMs ?? 0) - added.delayMs) < 0.01 &&
		(reading.invertedSources ?? []).length > 0 === added.isTurned &&
		(reading.blendPart === 'search') === (part === 'search');
	const prompt = levelPrompt(profile, {
		id: `bass:${step.id}`,
		stop: 'bass',
		question: `${capital(stepSentence(profile, step))}`,
		about: [`${capital(addedText(block))}${actionsText(profile, block)}.`, repeatText(step), played]
			.filter(Boolean)
			.join(' '),
		explain: `${blockSentence(block)} ${howToRead}`,
		drawing: stand,
		caution: toneCaution,
		row: step.playInto[0],
		isOwn,
		made: subject => ({
			source,
			seat,
			signal,
			round: 'first',
			...(toneSetOf(subject) ? {inForce: toneSetOf(subject)!.id} : {}),
			...(added.delayMs === 0 ? {} : {addedDelayMs: added.delayMs}),
			...(added.isTurned ? {invertedSources: blendOf(subject).subs.slice()} : {}),
			...(signal.kind === 'tone' ? {} : {blendPart: part === 'search' ? 'search' : 'verification'}),
		}),
		hint: after => troubleOf(after, step),
	});
	// Readings taken with other settings are shown, but the procedure asks again.
	return {...prompt, isAnswered: step.isTaken};
}

function isSameSignal(one: MeterReading['signal'], other: BlendStep['signal']): boolean {
	if (one?.kind === 'tone') return other.kind === 'tone' && one.hertz === other.hertz;
	return one?.kind === 'pink' && other.kind === 'pink';
}

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

/** Which box does it, with the value that it shows then; what stands is said where it is gone back to. */
function actionsText(profile: Profile, {actions}: BlendBlock): string {
	return actions.length === 0 ? '' : `: ${actions.map(action => actionText(profile, action)).join('; ')}`;
}

function repeatText({nth, signal}: BlendStep): string {
	return signal.kind === 'tone' || nth === 1 ? '' : `Reading ${nth} of it.`;
}

/** What is wrong with the readings of a front at a tone: levels that no two sounds make. */
function troubleOf(profile: Profile, {signal, playInto}: BlendStep): string | undefined {
	const {tones, ...rest} = blendOf(profile);
	const own = tones.filter(
		({front, hertz}) => front === playInto[0] && signal.kind === 'tone' && hertz === signal.hertz,
	);
	return readingSentences(profile, {
		...rest,
		tones: own,
		otherRelation: [],
		otherSettings: [],
		drowned: [],
		partly: [],
	})[0];
}
