import {
	type GenericBassProcessor,
	genericBassProcessorNames,
	genericBassProcessors,
} from '../../../profile/generic/bassProcessors.ts';
import type {BassProcessor, Profile} from '../../../profile/types.ts';
import {formatTime, readTime} from '../../../profile/units/time.ts';
import {walkAnswer, withAnswer} from '../answered.ts';
import type {Prompt} from '../prompt/prompt.ts';
import {choicePrompt, valuePrompt} from '../prompt/single.ts';
import {levelPrompts} from './levelSteps.ts';

/** The box between the receiver's sub outputs and the subs, where there is one, and its steps. */
export function processorPrompts(profile: Profile): Prompt<Profile>[] {
	const {bassProcessor, subs = []} = profile;
	if (subs.length === 0) return [];
	const kinds = genericBassProcessorNames;
	const chosen = kinds.findIndex(kind => genericBassProcessors[kind].name === bassProcessor?.name);
	const isNone = walkAnswer(profile, 'kit:processor') === 'none';
	const kind = choicePrompt<Profile>({
		id: 'kit:processor',
		stop: 'kit',
		question: 'A bass processor before the subs?',
		about: 'A box with its own delay and gain for each sub.',
		explain: 'Its latency makes the subs late; what must be typed into it is computed too.',
		drawing: ['  receiver ──▸ bass processor ──▸ sub 1', '                              └─▸ sub 2'],
		chosen: bassProcessor ? (chosen < 0 ? undefined : chosen + 1) : isNone ? 0 : undefined,
		other: bassProcessor && (bassProcessor.name ?? 'described by hand'),
		usual: 0,
		offers: [
			{label: 'None', put: subject => withAnswer(withoutProcessor(subject), 'kit:processor', 'none')},
			...kinds.map(name => ({
				label: genericBassProcessors[name].name,
				put: (subject: Profile) => withProcessorOf(subject, name),
			})),
		],
	});
	if (!bassProcessor) return [kind];
	return [
		kind,
		timePrompt(
			'latency',
			'Latency of the bass processor',
			'From the data sheet, input to output.',
			bassProcessor.latencyMs,
			(subject, latencyMs) => withProcessor(subject, {latencyMs}),
		),
		timePrompt(
			'delayStep',
			'Bass processor: smallest change of the delay',
			undefined,
			bassProcessor.delay.stepMs,
			(subject, stepMs) => withProcessor(subject, {delay: {...subject.bassProcessor!.delay, stepMs}}),
		),
		...levelPrompts('kit:gain', 'Bass processor, gain', bassProcessor.gain, (subject, gain) =>
			withProcessor(subject, {gain: {...subject.bassProcessor!.gain, ...gain}}),
		),
	];
}

function withProcessor(profile: Profile, change: Partial<BassProcessor>): Profile {
	return {...profile, bassProcessor: {...profile.bassProcessor!, ...change}};
}

function withProcessorOf(profile: Profile, name: GenericBassProcessor): Profile {
	const bassProcessor = structuredClone(genericBassProcessors[name]) as BassProcessor;
	const subs = profile.subs?.map((sub, index) => ({
		...sub,
		processorOutput: bassProcessor.outputs[index % bassProcessor.outputs.length]!,
	}));
	return {...profile, bassProcessor, subs};
}

function withoutProcessor(profile: Profile): Profile {
	const {bassProcessor, ...rest} = profile;
	if (!bassProcessor) return profile;
	return {...rest, subs: profile.subs?.map(({processorOutput, ...sub}) => sub)} as Profile;
}

function timePrompt(
	field: string,
	question: string,
	about: string | undefined,
	now: number,
	put: (subject: Profile, milliseconds: number) => Profile,
): Prompt<Profile> {
	return valuePrompt<Profile, {milliseconds: number; readAs: string}>({
		id: `kit:processor:${field}`,
		stop: 'kit',
		question,
		about,
		explain: 'As its data sheet or its menu tells.',
		unit: 'ms',
		shown: formatTime(now),
		read(text) {
			const reading = readTime(text);
			const isLatency = field === 'latency';
			const isFine =
				reading.kind !== 'ok' ||
				(reading.milliseconds >= 0 &&
					reading.milliseconds <= (isLatency ? 1000 : 100) &&
					(isLatency || reading.milliseconds > 0));
			return isFine
				? reading
				: {kind: 'no', why: 'A step is above 0 and up to 100 ms, a latency up to 1000 ms.'};
		},
		put: (subject, {milliseconds}) => put(subject, milliseconds),
	});
}
