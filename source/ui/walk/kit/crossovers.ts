import type {Profile, Receiver} from '../../../profile/types.ts';
import {readFrequency} from '../../../profile/units/frequency.ts';
import {readNumber} from '../../../profile/units/number.ts';
import type {Prompt} from '../prompt/prompt.ts';
import {choicePrompt, textPrompt, valuePrompt} from '../prompt/single.ts';
import {withReceiver} from './receiverChange.ts';

type Crossover = Receiver['crossover'];

/** Crossover frequencies that the receiver offers, and its sub outputs. */
export function crossoverPrompts(receiver: Receiver): Prompt<Profile>[] {
	const {crossover} = receiver;
	const scopes = ['per channel', 'common'] as const;
	return [
		choicesPrompt(crossover),
		choicePrompt<Profile>({
			id: 'kit:crossover:scope',
			stop: 'kit',
			question: 'One crossover for all, or one for each?',
			explain: 'Some receivers take a single frequency for all speakers.',
			chosen: scopes.indexOf(crossover.scope),
			offers: [
				{label: 'One for each channel', put: subject => withCrossover(subject, {scope: 'per channel'})},
				{label: 'One for all', put: subject => withCrossover(subject, {scope: 'common'})},
			],
		}),
		valuePrompt<Profile, {value: number; readAs: string}>({
			id: 'kit:subOutputs',
			stop: 'kit',
			question: 'Sub outputs of the receiver that are set singly',
			explain: 'Two sockets that carry the same signal count as one.',
			shown: String(receiver.subOutputs),
			read: text => readNumber(text, {minimum: 0, maximum: 8, isWhole: true}),
			put: (subject, {value}) => withReceiver(subject, {subOutputs: value}),
		}),
	];
}

function choicesPrompt(crossover: Crossover): Prompt<Profile> {
	const prompt = textPrompt<Profile>({
		id: 'kit:crossover:choices',
		stop: 'kit',
		question: 'Crossover frequencies it offers',
		about: 'All of them, with blanks between: 40 60 80 100 120.',
		explain: 'Only frequencies from this list are ever suggested.',
		shown: `${crossover.choicesHertz.join(' ')} Hz`,
		put: subject => subject,
	});
	return {
		...prompt,
		take(subject, text) {
			const readings = text
				.replace(/hz/gi, ' ')
				.split(/[\s;]+/)
				.filter(Boolean)
				.map(word => readFrequency(word));
			const refused = readings.find(reading => reading.kind === 'no');
			if (refused?.kind === 'no') return refused;
			const hertz = readings.flatMap(reading => (reading.kind === 'ok' ? [reading.hertz] : []));
			const choicesHertz = [...new Set(hertz)].toSorted((a, b) => a - b);
			if (choicesHertz.length === 0) return {kind: 'no', why: 'At least one frequency is needed.'};
			return {
				kind: 'taken',
				next: withCrossover(subject, {choicesHertz}),
				readAs: `${choicesHertz.join(', ')} Hz`,
			};
		},
	};
}

function withCrossover(profile: Profile, change: Partial<Crossover>): Profile {
	return withReceiver(profile, {crossover: {...profile.receiver!.crossover, ...change}});
}
