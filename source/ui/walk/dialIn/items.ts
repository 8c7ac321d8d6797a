import {channelNames} from '../../../profile/channels.ts';
import type {ChannelSetting, OutputSetting, Profile, SettingsSet} from '../../../profile/types.ts';
import {formatNumber, formatSigned} from '../../../profile/units/decimalText.ts';
import {entryValue} from '../../../report/entryValue.ts';
import {formatDelay, formatTrim} from '../../../report/settingText.ts';
import {inForceBefore, lfeTick, masterTick} from './inForceBefore.ts';

/** One setting of an item, as the box shows it. */
export type DialValue = {
	readonly label: string;
	/** With its unit: `11.5 ft`, `−0.5 dB`, `80 Hz`. */
	readonly value: string;
	/** What stands in the box before, where that is known and another value. */
	readonly was?: string;
	readonly isChanged: boolean;
	/** As it is written in the list of ticks where it is ticked without the rest of its item. */
	readonly tick: string;
	readonly isDone: boolean;
};

/** What is typed in together: one channel, one output of the bass processor, or a setting of the whole receiver. */
export type DialItem = {
	/** As it is written in the list of ticks. */
	readonly id: string;
	readonly title: string;
	readonly box: 'receiver' | 'bass processor';
	/** A clause about it, such as `it feeds Front sub`. */
	readonly about?: string;
	readonly values: readonly DialValue[];
	readonly isChanged: boolean;
	readonly isDone: boolean;
	readonly caution?: string;
};

type Texts = ReadonlyArray<readonly [label: string, now: string | undefined, before: string | undefined]>;

const masterCaution = 'Ears: turn the master volume all the way down before noise runs again.';

/**
Everything to type in for a set, in the order of doing it: channels that change, channels that stay, then the
outputs of the bass processor the same way, the LFE low-pass, and the master volume last.

@param masterChangeDb - How far to turn the master volume, where the set does not know its place on the scale.
*/
export function dialItems(profile: Profile, set: SettingsSet, masterChangeDb = 0): DialItem[] {
	const before = inForceBefore(profile, set);
	const done = set.dialledIn ?? [];
	const item = (
		id: string,
		rest: Pick<DialItem, 'title' | 'box' | 'about' | 'caution'>,
		texts: Texts,
	): DialItem => {
		const values = texts.flatMap(([label, now, before]) =>
			now === undefined ? [] : [dialValue(label, now, before, id, done)],
		);
		return {
			id,
			...rest,
			values,
			isChanged: values.some(({isChanged}) => isChanged),
			isDone: done.includes(id) || (values.length > 0 && values.every(({isDone}) => isDone)),
		};
	};

	const channels = profile.channels.flatMap(({id}) => {
		const setting = set.channels[id];
		if (!setting) return [];
		return [
			item(
				id,
				{title: channelNames[id], box: 'receiver'},
				channelTexts(profile, setting, before.channel(id)),
			),
		];
	});
	const outputs = (profile.bassProcessor?.outputs ?? []).flatMap(id => {
		const setting = set.outputs?.[id];
		if (!setting) return [];
		return [
			item(
				id,
				{title: `Output ${id}`, box: 'bass processor', about: fedText(profile, id)},
				outputTexts(setting, before.output(id)),
			),
		];
	});
	return [
		...changedFirst(channels),
		...changedFirst(outputs),
		...(set.lfeLowPassHertz === undefined
			? []
			: [
					item(lfeTick, {title: 'Low-pass of the LFE channel', box: 'receiver'}, [
						['Frequency', hertzText(set.lfeLowPassHertz), hertzText(before.lfeLowPassHertz)],
					]),
				]),
		item(masterTick, masterWords(set), [
			['Volume', masterText(set.masterVolumeDb), masterText(before.masterVolumeDb)],
			['Turn it by', set.masterVolumeDb === undefined ? turnText(masterChangeDb) : undefined, undefined],
		]),
	].filter(({values}) => values.length > 0);
}

function masterWords({masterVolumeDb}: SettingsSet) {
	const about = masterVolumeDb === undefined ? 'from where it stood while you metered' : undefined;
	return {title: 'Master volume', box: 'receiver', about, caution: masterCaution} as const;
}

/** Trims only match channels to each other; what is left is the master's, and no step of it is known. */
function masterText(masterVolumeDb: number | undefined): string | undefined {
	return masterVolumeDb === undefined ? undefined : `${formatNumber(masterVolumeDb, 1)} dB`;
}

function turnText(changeDb: number): string | undefined {
	const text = formatSigned(changeDb, 1);
	return text === '0.0' ? undefined : `${text} dB`;
}

function dialValue(
	label: string,
	value: string,
	before: string | undefined,
	itemId: string,
	done: readonly string[],
): DialValue {
	const isChanged = before !== value;
	const tick = `${itemId}.${label.toLowerCase().replaceAll(' ', '-')}`;
	return {
		label,
		value,
		isChanged,
		...(isChanged && before !== undefined ? {was: before} : {}),
		tick,
		isDone: done.includes(itemId) || done.includes(tick),
	};
}

function changedFirst(items: readonly DialItem[]): DialItem[] {
	return [...items.filter(({isChanged}) => isChanged), ...items.filter(({isChanged}) => !isChanged)];
}

function channelTexts(profile: Profile, now: ChannelSetting, before: ChannelSetting | undefined): Texts {
	const distance = (setting: ChannelSetting | undefined) =>
		setting?.distanceMetres && entryValue(profile, 'distance', setting.distanceMetres.stepped);
	return [
		['Distance', distance(now), distance(before)],
		['Delay', delayText(now.delayMs), delayText(before?.delayMs)],
		['Trim', trimText(now.trimDb), trimText(before?.trimDb)],
		['Crossover', crossoverText(now.crossoverHertz), crossoverText(before?.crossoverHertz)],
		['Polarity', ...polarityTexts(now, before)],
	];
}

function outputTexts(now: OutputSetting, before: OutputSetting | undefined): Texts {
	return [
		['Delay', delayText(now.delayMs), delayText(before?.delayMs)],
		['Gain', trimText(now.gainDb), trimText(before?.gainDb)],
		['Polarity', ...polarityTexts(now, before)],
	];
}

/** Polarity is worth typing only where it is, or was, inverted. */
function polarityTexts(
	now: {readonly polarityInverted?: boolean},
	before: {readonly polarityInverted?: boolean} | undefined,
): [string | undefined, string | undefined] {
	if (!now.polarityInverted && !before?.polarityInverted) return [undefined, undefined];
	const text = (isInverted: boolean | undefined) => (isInverted ? 'inverted' : 'normal');
	return [text(now.polarityInverted), before && text(before.polarityInverted)];
}

function delayText(delay: {readonly stepped: number} | undefined): string | undefined {
	return delay && formatDelay(delay.stepped);
}

function trimText(trim: {readonly stepped: number} | undefined): string | undefined {
	return trim && levelText(trim.stepped);
}

function levelText(decibels: number | undefined): string | undefined {
	return decibels === undefined ? undefined : `${formatTrim(decibels)} dB`;
}

function hertzText(frequencyHz: number | undefined): string | undefined {
	return frequencyHz === undefined ? undefined : `${frequencyHz} Hz`;
}

function crossoverText(crossover: ChannelSetting['crossoverHertz']): string | undefined {
	return crossover === 'full' ? 'full range' : hertzText(crossover);
}

function fedText(profile: Profile, output: string): string | undefined {
	const names = (profile.subs ?? [])
		.filter(({processorOutput}) => processorOutput === output)
		.map(({name}) => name);
	return names.length > 0 ? `it feeds ${names.join(', ')}` : undefined;
}
