import {nameOf} from '../../../profile/names.ts';
import type {ChannelId, Profile, SpeakerData} from '../../../profile/types.ts';
import {readNumber} from '../../../profile/units/number.ts';
import {formatTime, readTime} from '../../../profile/units/time.ts';
import {speakerPairs} from '../order.ts';
import type {Prompt} from '../prompt/prompt.ts';
import {valuePrompt} from '../prompt/single.ts';
import {boxPrompt} from './boxPrompt.ts';
import {boxSizePrompt} from './boxSize.ts';
import {
	type LimitReading,
	limitText,
	readLimit,
	readSensitivity,
	type SensitivityReading,
} from './dataSheet.ts';

type NumberField = 'impedanceOhms' | 'amplifierWatts';

const numbers: ReadonlyArray<{
	readonly field: NumberField;
	readonly words: string;
	readonly unit: string;
	readonly minimum: number;
	readonly maximum: number;
	readonly explain: string;
}> = [
	{
		field: 'impedanceOhms',
		words: 'nominal impedance',
		unit: 'ohm',
		minimum: 1,
		maximum: 1000,
		explain: 'From the data sheet: 4, 6 or 8 as a rule.',
	},
	{
		field: 'amplifierWatts',
		words: 'amplifier power',
		unit: 'W',
		minimum: 1,
		maximum: 100_000,
		explain: 'Watts for this channel into that impedance, from the amplifier’s data sheet.',
	},
];

/** What crossovers need of data sheets, asked once for a left and right pair: the limits, one after the other, then the boxes. */
export function limitAndBoxPrompts(profile: Profile): Prompt<Profile>[] {
	const pairs = speakerPairs(profile);
	return [
		...pairs.map(pair => pairLimitPrompt(profile, pair)),
		...pairs.map(pair => pairBoxPrompt(profile, pair)),
	];
}

/** The rest of the data sheets, asked once for a left and right pair. */
export function speakerPrompts(profile: Profile): Prompt<Profile>[] {
	const pairs = speakerPairs(profile);
	return [
		...pairs.flatMap(pair => [
			sensitivityPrompt(profile, pair),
			...numbers.map(number => numberPrompt(profile, pair, number)),
		]),
		...pairs.map(pair => pairLatencyPrompt(profile, pair)),
		...pairs.map(pair =>
			boxSizePrompt(
				profile,
				{id: `kit:size:${pair[0]}`, name: pairName(profile, pair), now: dataOf(profile, pair)},
				(subject, size) => withData(subject, pair, size),
			),
		),
	];
}

function pairName(profile: Profile, [first, second]: readonly ChannelId[]): string {
	return second ? `${nameOf(profile, first!)} and right` : nameOf(profile, first!);
}

function dataOf(profile: Profile, pair: readonly ChannelId[]): SpeakerData {
	return profile.channels.find(({id}) => id === pair[0])?.speaker ?? {};
}

function withData(profile: Profile, pair: readonly ChannelId[], change: Partial<SpeakerData>): Profile {
	const channels = profile.channels.map(channel =>
		pair.includes(channel.id) ? {...channel, speaker: {...channel.speaker, ...change}} : channel,
	);
	return {...profile, channels};
}

export function pairLimitPrompt(profile: Profile, pair: readonly ChannelId[]): Prompt<Profile> {
	const {lowLimitHertz, lowLimitDropDb} = dataOf(profile, pair);
	return valuePrompt<Profile, LimitReading>({
		id: `kit:lowLimit:${pair[0]}`,
		stop: 'kit',
		question: `${pairName(profile, pair)}: low limit`,
		about: 'Lower end of its range in the data sheet: 45 means at −3 dB; 45 -6dB and 45 -10dB work too.',
		explain: 'The crossover is never set below what the speaker can do.',
		unit: 'Hz',
		shown: lowLimitHertz === undefined ? undefined : limitText(lowLimitHertz, lowLimitDropDb),
		read: readLimit,
		put: (subject, {hertz, dropDb}) =>
			withData(subject, pair, {lowLimitHertz: hertz, lowLimitDropDb: dropDb}),
	});
}

function pairBoxPrompt(profile: Profile, pair: readonly ChannelId[]): Prompt<Profile> {
	const asked = {id: `kit:box:${pair[0]}`, name: pairName(profile, pair), now: dataOf(profile, pair)};
	return boxPrompt(asked, (subject, box) => withData(subject, pair, box));
}

function sensitivityPrompt(profile: Profile, pair: readonly ChannelId[]): Prompt<Profile> {
	const {sensitivityDb, sensitivityFor} = dataOf(profile, pair);
	const basis = sensitivityFor ? ` for ${sensitivityFor}` : '';
	return valuePrompt<Profile, SensitivityReading>({
		id: `kit:sensitivityDb:${pair[0]}`,
		stop: 'kit',
		question: `${pairName(profile, pair)}: sensitivity`,
		about: 'At one metre: 89 is taken for 2.83 V; 89 1W where the sheet says one watt.',
		explain: 'From the data sheet. Shows which channel gives out first.',
		unit: 'dB',
		shown: sensitivityDb === undefined ? undefined : `${sensitivityDb} dB${basis}`,
		read: readSensitivity,
		put: (subject, {value, basis: sensitivityFor}) =>
			withData(subject, pair, {sensitivityDb: value, sensitivityFor}),
	});
}

function numberPrompt(
	profile: Profile,
	pair: readonly ChannelId[],
	{field, words, unit, minimum, maximum, explain}: (typeof numbers)[number],
): Prompt<Profile> {
	const value = dataOf(profile, pair)[field];
	return valuePrompt<Profile, {value: number; readAs: string}>({
		id: `kit:${field}:${pair[0]}`,
		stop: 'kit',
		question: `${pairName(profile, pair)}: ${words}`,
		explain,
		unit,
		shown: value === undefined ? undefined : `${value} ${unit}`,
		read: text => readNumber(text, {minimum, maximum, unit}),
		put: (subject, reading) => withData(subject, pair, {[field]: reading.value}),
	});
}

export function pairLatencyPrompt(profile: Profile, pair: readonly ChannelId[]): Prompt<Profile> {
	const latencyMs = profile.channels.find(({id}) => id === pair[0])?.latencyMs;
	return valuePrompt<Profile, {milliseconds: number; readAs: string}>({
		id: `kit:latency:${pair[0]}`,
		stop: 'kit',
		question: `${pairName(profile, pair)}: delay of a wireless link or converter`,
		about: 'Only where one is in the line. A cable has none.',
		explain: 'The sound is late by that much; the other channels must wait for it.',
		unit: 'ms',
		shown: latencyMs === undefined ? undefined : formatTime(latencyMs),
		read(text) {
			const reading = readTime(text);
			const isFine = reading.kind !== 'ok' || (reading.milliseconds >= 0 && reading.milliseconds <= 1000);
			return isFine ? reading : {kind: 'no', why: 'A link is late by 0 to 1000 ms.'};
		},
		put: (subject, {milliseconds}) => ({
			...subject,
			channels: subject.channels.map(channel =>
				pair.includes(channel.id) ? {...channel, latencyMs: milliseconds} : channel,
			),
		}),
	});
}
