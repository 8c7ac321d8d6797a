import type {Profile, Sub} from '../../../profile/types.ts';
import {readFrequency} from '../../../profile/units/frequency.ts';
import {formatTime, readTime} from '../../../profile/units/time.ts';
import type {Prompt} from '../prompt/prompt.ts';
import {choicePrompt, textPrompt, valuePrompt} from '../prompt/single.ts';

/** What is asked of each sub: its name, its range, its own delay, its box and the processor's output that feeds it. */
export function subPrompts(profile: Profile): Prompt<Profile>[] {
	return (profile.subs ?? []).flatMap(sub => [
		namePrompt(sub),
		...outputPrompt(profile, sub),
		frequencyPrompt(sub, 'lowLimitHertz', 'how low?', 'Lower end of its range in the data sheet, at −3 dB.'),
		frequencyPrompt(
			sub,
			'upperLimitHertz',
			'how high?',
			'Upper end of its range, its own low-pass switched off.',
		),
		boxPrompt(sub),
		latencyPrompt(sub),
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
		about: 'Where it stands, say: Sub by the window.',
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

function frequencyPrompt(
	sub: Sub,
	field: 'lowLimitHertz' | 'upperLimitHertz',
	words: string,
	about: string,
): Prompt<Profile> {
	const hertz = sub[field];
	return valuePrompt<Profile, {hertz: number; readAs: string}>({
		id: `kit:${field}:${sub.id}`,
		stop: 'kit',
		question: `${sub.name}: ${words}`,
		about,
		explain: 'The crossover must lie inside the range of the sub.',
		unit: 'Hz',
		shown: hertz === undefined ? undefined : `${hertz} Hz`,
		read: text => readFrequency(text),
		put: (subject, reading) => withSub(subject, sub.id, {[field]: reading.hertz}),
	});
}

function boxPrompt(sub: Sub): Prompt<Profile> {
	const boxes = ['closed', 'vented'] as const;
	return choicePrompt<Profile>({
		id: `kit:box:${sub.id}`,
		stop: 'kit',
		question: `${sub.name}: closed or vented?`,
		about: 'A vented box has a hole or tube.',
		explain: 'A closed box fades out gently below its limit, a vented one steeply.',
		chosen: sub.box ? boxes.indexOf(sub.box) : undefined,
		offers: [
			{label: 'Closed', put: subject => withSub(subject, sub.id, {box: 'closed'})},
			{label: 'Vented', put: subject => withSub(subject, sub.id, {box: 'vented'})},
		],
	});
}

function latencyPrompt(sub: Sub): Prompt<Profile> {
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
