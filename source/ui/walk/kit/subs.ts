import type {Profile, Sub} from '../../../profile/types.ts';
import {readFrequency} from '../../../profile/units/frequency.ts';
import {formatTime, readTime} from '../../../profile/units/time.ts';
import type {Prompt} from '../prompt/prompt.ts';
import {choicePrompt, textPrompt, valuePrompt} from '../prompt/single.ts';
import {boxPrompt} from './boxPrompt.ts';
import {boxSizePrompt} from './boxSize.ts';
import {type LimitReading, limitText, readLimit} from './dataSheet.ts';

/** What is asked of each sub: its name, its range, its own delay, its box and the processor's output that feeds it. */
export function subPrompts(profile: Profile): Prompt<Profile>[] {
	return (profile.subs ?? []).flatMap(sub => [
		namePrompt(sub),
		...outputPrompt(profile, sub),
		lowLimitPrompt(sub),
		upperLimitPrompt(sub),
		boxPrompt({id: `kit:box:${sub.id}`, name: sub.name, now: sub}, (subject, box) =>
			withSub(subject, sub.id, box),
		),
		subLatencyPrompt(sub),
		boxSizePrompt(profile, {id: `kit:size:${sub.id}`, name: sub.name, now: sub}, (subject, size) =>
			withSub(subject, sub.id, size),
		),
	]);
}

function withSub(profile: Profile, id: string, change: Partial<Sub>): Profile {
	return {...profile, subs: profile.subs?.map(sub => (sub.id === id ? {...sub, ...change} : sub))};
}

function namePrompt(sub: Sub): Prompt<Profile> {
	return textPrompt<Profile>({
		id: `kit:name:${sub.id}`,
		stop: 'kit',
		question: `${sub.name}: another name?`,
		about: 'After where it stands. For example: Sub by the window.',
		explain: 'The name is shown wherever this sub is asked about.',
		shown: sub.name,
		put: (subject, name) => withSub(subject, sub.id, {name}),
	});
}

function outputPrompt(profile: Profile, sub: Sub): Prompt<Profile>[] {
	const outputs = profile.bassProcessor?.outputs;
	if (!outputs) return [];
	const chosen = outputs.indexOf(sub.processorOutput ?? '');
	return [
		choicePrompt<Profile>({
			id: `kit:output:${sub.id}`,
			stop: 'kit',
			question: `${sub.name}: which output feeds it?`,
			explain: 'Delay, gain and polarity of this sub are then set at that output.',
			chosen: chosen < 0 ? undefined : chosen,
			offers: outputs.map(id => ({
				label: id,
				put: subject => withSub(subject, sub.id, {processorOutput: id}),
			})),
		}),
	];
}

const rangeExplained = 'The crossover must lie inside the range of the sub.';

function lowLimitPrompt({id, name, lowLimitHertz, lowLimitDropDb}: Sub): Prompt<Profile> {
	return valuePrompt<Profile, LimitReading>({
		id: `kit:lowLimitHertz:${id}`,
		stop: 'kit',
		question: `${name}: low limit`,
		about: 'Lower end of its range in the data sheet: 28 means at −3 dB; 28 -6dB and 28 -10dB work too.',
		explain: rangeExplained,
		unit: 'Hz',
		shown: lowLimitHertz === undefined ? undefined : limitText(lowLimitHertz, lowLimitDropDb),
		read: readLimit,
		put: (subject, {hertz, dropDb}) => withSub(subject, id, {lowLimitHertz: hertz, lowLimitDropDb: dropDb}),
	});
}

function upperLimitPrompt({id, name, upperLimitHertz}: Sub): Prompt<Profile> {
	return valuePrompt<Profile, {hertz: number; readAs: string}>({
		id: `kit:upperLimitHertz:${id}`,
		stop: 'kit',
		question: `${name}: how high?`,
		about: 'Upper end of its range, its own low-pass switched off.',
		explain: rangeExplained,
		unit: 'Hz',
		shown: upperLimitHertz === undefined ? undefined : `${upperLimitHertz} Hz`,
		read: text => readFrequency(text),
		put: (subject, {hertz}) => withSub(subject, id, {upperLimitHertz: hertz}),
	});
}

export function subLatencyPrompt(sub: Sub): Prompt<Profile> {
	return valuePrompt<Profile, {milliseconds: number; readAs: string}>({
		id: `kit:latency:${sub.id}`,
		stop: 'kit',
		question: `${sub.name}: delay of its own electronics`,
		about: 'Wireless link or digital input, from the data sheet. Nothing else.',
		explain: 'Added to the way through the air. The processor’s own delay is asked once, at the processor.',
		unit: 'ms',
		shown: sub.latencyMs === undefined ? undefined : formatTime(sub.latencyMs),
		read(text) {
			const reading = readTime(text);
			const isFine = reading.kind !== 'ok' || (reading.milliseconds >= 0 && reading.milliseconds <= 1000);
			return isFine ? reading : {kind: 'no', why: 'A sub is late by 0 to 1000 ms.'};
		},
		put: (subject, {milliseconds}) => withSub(subject, sub.id, {latencyMs: milliseconds}),
	});
}
