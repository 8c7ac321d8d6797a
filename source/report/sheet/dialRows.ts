import {channelNames} from '../../profile/channels.ts';
import type {Profile, SettingsSet} from '../../profile/types.ts';
import type {Solution} from '../../study/calibration/result.ts';
import {formatEntry} from '../entryText.ts';
import {formatDelay, formatTrim} from '../settingText.ts';
import type {DialRow} from './content.ts';

type Timing = {readonly kind: 'delay' | 'distance'; readonly stepped: number};

function timingText(timing: Timing | undefined, profile: Profile): string {
	if (!timing) return '';
	if (timing.kind === 'delay') return formatDelay(timing.stepped);
	const entry = profile.receiver?.timing;
	// Without a receiver the distance is the plain one of the solver's assumption: centimetres of a metre.
	return entry?.kind === 'distance' ? formatEntry(timing.stepped, entry) : `${timing.stepped.toFixed(2)} m`;
}

function crossoverText(hertz: number | 'full' | undefined): string {
	if (hertz === undefined) return '';
	return hertz === 'full' ? 'full range' : `${hertz} Hz`;
}

const polarityText = (isInverted: boolean | undefined) => (isInverted ? 'inverted' : '');

/** Rows from the kept set of settings, in the order of the profile's channels. */
export function rowsOfSet(set: SettingsSet, profile: Profile): {receiver: DialRow[]; processor: DialRow[]} {
	const receiver = profile.channels.flatMap(({id}): DialRow[] => {
		const setting = set.channels[id];
		if (!setting) return [];
		const timing: Timing | undefined = setting.distanceMetres
			? {kind: 'distance', stepped: setting.distanceMetres.stepped}
			: setting.delayMs && {kind: 'delay', stepped: setting.delayMs.stepped};
		return [
			{
				name: channelNames[id],
				crossover: crossoverText(setting.crossoverHertz),
				timing: timingText(timing, profile),
				trim: setting.trimDb ? formatTrim(setting.trimDb.stepped) : '',
				polarity: polarityText(setting.polarityInverted),
			},
		];
	});
	const processor = Object.entries(set.outputs ?? {}).map(([id, setting]) => ({
		name: outputName(id, profile),
		crossover: '',
		timing: setting.delayMs ? formatDelay(setting.delayMs.stepped) : '',
		trim: setting.gainDb ? formatTrim(setting.gainDb.stepped) : '',
		polarity: polarityText(setting.polarityInverted),
	}));
	return {receiver, processor};
}

/** Rows from a fresh solution that nobody has kept yet. */
export function rowsOfSolution(
	solution: Solution,
	profile: Profile,
): {receiver: DialRow[]; processor: DialRow[]} {
	const receiver = solution.channels.map(channel => ({
		name: channelNames[channel.id],
		crossover: crossoverText(channel.crossoverHertz),
		timing: timingText(channel.timing, profile),
		trim: channel.trimDb ? formatTrim(channel.trimDb.stepped) : '',
		polarity: polarityText(channel.polarityInverted),
	}));
	const processor = solution.outputs.map(output => ({
		name: outputName(output.id, profile),
		crossover: '',
		timing: output.delayMs ? formatDelay(output.delayMs.stepped) : '',
		trim: output.gainDb ? formatTrim(output.gainDb.stepped) : '',
		polarity: polarityText(output.polarityInverted),
	}));
	return {receiver, processor};
}

function outputName(id: string, profile: Profile): string {
	const fed = (profile.subs ?? [])
		.filter(({processorOutput}) => processorOutput === id)
		.map(({name}) => name);
	return fed.length > 0 ? `${id}: ${fed.join(', ')}` : id;
}
