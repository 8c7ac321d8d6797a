import {nameOf} from '../../../profile/names.ts';
import type {Profile} from '../../../profile/types.ts';
import {sentenceOf} from '../../../report/said/said.ts';
import {collectPairs} from '../../../study/calibration/blend/collect.ts';
import {planSetting} from '../../../study/calibration/blend/setting.ts';
import type {BlendStep} from '../../../study/calibration/blend/steps.ts';
import {levelPrompt} from '../meter/levelPrompt.ts';
import {keyOf} from '../meter/meterPrompt.ts';
import {pagePrompt} from '../prompt/pagePrompt.ts';
import type {Prompt} from '../prompt/prompt.ts';
import {sayFor} from '../sayFor.ts';
import {actionText} from './actionText.ts';
import {blendOf} from './blendOf.ts';
import {toneSetOf, toneSetPrompt} from './toneSet.ts';

const toneCaution =
	'Master down before the tone, then up slowly to about 75 dB. Stop when a cone buzzes or clacks; half a minute at most.';
const stand: readonly string[] = [
	'      ┬   meter on a stand at ear height, C slow;',
	'      │   tone on for 5 s, then take the',
	'     [ ]  mean of the next 5 s',
];

/** The stop Bass: its page, which settings stand, and each tone of the procedure. Without subs only the page. */
export function bassPrompts(profile: Profile): Prompt<Profile>[] {
	const page = pagePrompt<Profile>(
		'bass',
		'Do subs and speakers add up?',
		'Tones around the crossover, each side alone and both together, tell delay and polarity of the subs.',
	);
	const {steps} = blendOf(profile);
	return steps.length === 0
		? [page]
		: [page, toneSetPrompt(profile), ...steps.map(step => tonePrompt(profile, step))];
}

function tonePrompt(profile: Profile, step: BlendStep): Prompt<Profile> {
	const {source, seat, hertz, addedDelayMs} = step;
	const names = [source].flat().map(id => nameOf(profile, id));
	const prompt = levelPrompt(profile, {
		id: `bass:${step.id}`,
		stop: 'bass',
		question: `${hertz} Hz tone: ${names.join(' + ')}`,
		about: [step.prepare, delayText(profile, step), intoText(profile, step)].filter(Boolean).join(' '),
		explain: `${step.why} ${step.how}`,
		drawing: stand,
		caution: toneCaution,
		row: step.playInto,
		isOwn: reading =>
			reading.signal?.kind === 'tone' &&
			reading.signal.hertz === hertz &&
			reading.round === 'first' &&
			reading.seat === seat &&
			keyOf(reading.source) === keyOf(source) &&
			Math.abs((reading.addedDelayMs ?? 0) - addedDelayMs) < 0.01,
		made: subject => ({
			source,
			seat,
			signal: {kind: 'tone', hertz},
			round: 'first',
			...(toneSetOf(subject) ? {inForce: toneSetOf(subject)!.id} : {}),
			...(addedDelayMs === 0 ? {} : {addedDelayMs}),
		}),
		hint: after => (step.part === 'still' || step.part === 'moved' ? undefined : troubleOf(after, step)),
	});
	// Readings taken with other settings are shown, but the procedure asks again.
	return {...prompt, isAnswered: step.taken > 0};
}

/** Where the tone goes in; the words on what to unplug tell it themselves where it is another channel than one expects. */
function intoText(profile: Profile, {part, playInto}: BlendStep): string {
	return part === 'moved' ? '' : `Tone into ${nameOf(profile, playInto)}.`;
}

/** What is wrong with the readings of a pair at a tone, such as a level that no delay explains. */
function troubleOf(profile: Profile, {pair, hertz}: BlendStep): string | undefined {
	const remarks = blendOf(profile).result.pairs.find(({id}) => id === pair)?.remarks ?? [];
	const serious = remarks.filter(({kind}) => kind === 'problem' || kind === 'doubt');
	const texts = serious.map(remark => sentenceOf(remark, sayFor(profile)));
	return texts.find(text => text.includes(`${hertz} Hz`));
}

/** How the added delay is made with what the receiver takes; empty where none is added. */
function delayText(profile: Profile, step: BlendStep): string {
	if (step.addedDelayMs === 0) return '';
	const pair = collectPairs(profile).pairs.find(({id}) => id === step.pair);
	const setting = pair && planSetting(profile, pair, step.addedDelayMs, false);
	const actions = setting?.actions.map(action => actionText(profile, action)) ?? [];
	return actions.length > 0 ? `For it: ${actions.join('; ')}. Undo it afterwards.` : '';
}
