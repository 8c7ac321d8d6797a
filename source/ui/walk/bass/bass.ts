import type {MeterReading, Profile} from '../../../profile/types.ts';
import {
	addedText,
	blockSentence,
	howToRead,
	readingSentences,
	stepSentence,
} from '../../../report/said/blend.ts';
import {pairReadingSentences} from '../../../report/said/pair.ts';
import {capitalised} from '../../../report/said/sentences.ts';
import type {BlendResult} from '../../../study/calibration/blend/blendResult.ts';
import {readingOfStep} from '../../../study/calibration/blend/readingOfStep.ts';
import type {BlendBlock, BlendStep} from '../../../study/calibration/blend/steps.ts';
import {levelPrompt} from '../meter/levelPrompt.ts';
import {keyOf} from '../meter/meterPrompt.ts';
import {pagePrompt} from '../prompt/pagePrompt.ts';
import type {Prompt} from '../prompt/prompt.ts';
import {actionText} from './actionText.ts';
import {blendOf} from './blendOf.ts';
import {isPairChosen, isPairToDialIn, pairPrompts} from './pairPrompts.ts';
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
	const answeredWhere = (is: boolean) => (prompt: Prompt<Profile>) =>
		is ? {...prompt, isAnswered: true} : prompt;
	const pairSteps = result.pair?.blocks.flatMap(block => block.steps) ?? [];
	const pair = pairPrompts(profile, result, (block, step) =>
		readingPrompt(profile, block, step, fileText(profile, step, pairSteps)),
	);
	const isPair = isPairChosen(profile, result);
	const next = [...(isPair ? pairSteps : []), ...all].find(({isTaken}) => !isTaken) ?? all[0];
	const sound = next ? [answeredWhere(isDone)(bassSoundPrompt(profile, next))] : [];
	const set = answeredWhere(isDone)(setPrompt(profile, result));
	// Nothing is read through the crossover before what was kept between the subs stands in the boxes.
	const fronts = isPairToDialIn(result)
		? []
		: [
				answeredWhere(isDone)(wayPrompt(profile, result.ways)),
				...(isPair && pair.length > 1 ? [] : sound),
				...steps,
			];
	const [offer, ...pairReadings] = pair;
	return [
		page,
		...togetherPrompts(profile),
		set,
		...(offer ? [offer] : []),
		...(isPair && pair.length > 1 ? sound : []),
		...pairReadings,
		...fronts,
	];
}

/** Which settings stand; asked anew once a change between the subs was typed in. */
function setPrompt(profile: Profile, result: BlendResult): Prompt<Profile> {
	const prompt = toneSetPrompt(profile);
	const isSince = result.standsApart && result.pair?.wanted?.isDecided === true;
	return isSince ? {...prompt, isAnswered: false} : prompt;
}

function readingPrompt(
	profile: Profile,
	block: BlendBlock,
	step: BlendStep,
	played: string,
): Prompt<Profile> {
	const {source, seat, signal, added, part} = step;
	const {subs} = blendOf(profile);
	const made = readingOfStep(step, subs);
	const isOwn = (reading: MeterReading) =>
		reading.round === 'first' &&
		reading.seat === seat &&
		keyOf(reading.source) === keyOf(source) &&
		isSameSignal(reading.signal, signal) &&
		Math.abs((reading.addedDelayMs ?? 0) - added.delayMs) < 0.01 &&
		keyOf(reading.addedDelaySources ?? []) === keyOf(made.addedDelaySources ?? []) &&
		keyOf(reading.invertedSources ?? []) === keyOf(made.invertedSources ?? []) &&
		(reading.blendPart === 'search') === (part === 'search');
	const prompt = levelPrompt(profile, {
		id: `bass:${step.id}`,
		stop: 'bass',
		question: `${capitalised(stepSentence(profile, step))}`,
		about: [
			`${capitalised(addedText(profile, block))}${actionsText(profile, block)}.`,
			repeatText(step),
			played,
		]
			.filter(Boolean)
			.join(' '),
		explain: `${blockSentence(block)} ${howToRead}`,
		drawing: stand,
		caution: toneCaution,
		row: step.playInto[0],
		isOwn,
		made: subject => ({
			...made,
			...(toneSetOf(subject) ? {inForce: toneSetOf(subject)!.id} : {}),
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

/** Which box does it, with the value that it shows then; what stands is said where it is gone back to. */
function actionsText(profile: Profile, {actions}: BlendBlock): string {
	return actions.length === 0 ? '' : `: ${actions.map(action => actionText(profile, action)).join('; ')}`;
}

function repeatText({nth, signal}: BlendStep): string {
	return signal.kind === 'tone' || nth === 1 ? '' : `Reading ${nth} of it.`;
}

/** The same of both subs together. */
function pairTroubleOf(profile: Profile, signal: BlendStep['signal']): string | undefined {
	const {pair} = blendOf(profile);
	if (!pair || signal.kind !== 'tone') return undefined;
	return pairReadingSentences({...pair, tones: pair.tones.filter(({hertz}) => hertz === signal.hertz)})[0];
}

/** What is wrong with the readings of a front at a tone: levels that no two sounds make. */
function troubleOf(profile: Profile, {signal, playInto, part}: BlendStep): string | undefined {
	if (part === 'pair') return pairTroubleOf(profile, signal);
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
