import {standingSettings} from '../../../profile/ask/settings.ts';
import {nameOf} from '../../../profile/names.ts';
import type {ChannelId, Profile, SettingsSet} from '../../../profile/types.ts';
import {readNumber} from '../../../profile/units/number.ts';
import {formatTrim} from '../../../report/settingText.ts';
import type {Prompt} from '../prompt/prompt.ts';
import {choicePrompt, type OfferedChoice, valuePrompt} from '../prompt/single.ts';
import {foundSet} from './meterPrompt.ts';

/** @see NIOSH 98-126, Criteria for a Recommended Standard: Occupational Noise Exposure, 1998, section 1.1. */
export const noiseCaution =
	'Ears: turn the master volume all the way down first, then noise on, then up to 75 dB. From 85 dB(A) limit the time: 8 hours, half of it for each 3 dB more.';

/** The same once the noise has run. */
export const briefNoise = 'Ears: master down before anything is switched.';

/**
What stands in the receiver while the first round is metered: without it no new trim can be computed.
Where it is neither zero nor the last set, the trims are asked one by one.
*/
export function foundPrompts(profile: Profile): Prompt<Profile>[] {
	const found = foundSet(profile);
	const last = standingSettings({...profile, settings: profile.settings?.filter(set => set !== found)});
	const offers: Array<OfferedChoice<Profile> & {readonly is: (set: SettingsSet) => boolean}> = [
		{
			label: 'All at 0 dB',
			hint: 'the surest start',
			put: subject => withFound(subject, zeroSet(subject)),
			is: set => set.origin === 'found' && set.copyOf === undefined,
		},
		{
			label: 'At other values, typed in next',
			put: subject => withFound(subject, {...zeroSet(subject), origin: 'entered'}),
			is: set => set.origin === 'entered',
		},
	];
	if (last) {
		offers.push({
			label: `As in “${last.name ?? last.id}”`,
			put: subject => withFound(subject, {...last, origin: 'found', copyOf: last.id}),
			is: set => set.copyOf === last.id,
		});
	}

	const start = choicePrompt<Profile>({
		id: 'meter:start',
		stop: 'meter',
		question: 'How do the trims stand?',
		about: 'Set them in the receiver, then leave them and the master volume alone.',
		explain: 'Each new trim is the one in force plus what is missing, so the one in force must be known.',
		isRequired: true,
		chosen: found
			? Math.max(
					0,
					offers.findIndex(({is}) => is(found)),
				)
			: undefined,
		usual: 0,
		offers,
	});
	if (found?.origin !== 'entered') return [start];
	return [start, ...profile.channels.map(({id}) => trimPrompt(profile, found, id))];
}

function trimPrompt(profile: Profile, found: SettingsSet, id: ChannelId): Prompt<Profile> {
	const limits = profile.receiver?.trim;
	const trimDb = found.channels[id]?.trimDb?.stepped;
	return valuePrompt<Profile, {value: number; readAs: string}>({
		id: `meter:trim:${id}`,
		stop: 'meter',
		question: `${nameOf(profile, id)}: trim now`,
		about: 'As the receiver shows it.',
		explain: 'The trim that stands while you meter, with its sign: -2.5 or 1.',
		unit: 'dB',
		isRequired: true,
		row: id,
		shown: trimDb === undefined ? undefined : `${formatTrim(trimDb)} dB`,
		read: text =>
			readNumber(text, {
				minimum: limits?.minimumDb ?? -30,
				maximum: limits?.maximumDb ?? 30,
				unit: 'dB',
			}),
		put: (subject, {value}) => withTrim(subject, id, value),
	});
}

/** All trims at zero; with `entered` the trims start empty, so that each is asked. */
function zeroSet(profile: Profile): SettingsSet {
	const zero = {trimDb: {stepped: 0}};
	return {
		id: 'found',
		name: 'Before the round',
		origin: 'found',
		channels: Object.fromEntries(profile.channels.map(({id}) => [id, zero])),
		...(profile.bassProcessor
			? {outputs: Object.fromEntries(profile.bassProcessor.outputs.map(id => [id, {gainDb: {stepped: 0}}]))}
			: {}),
	};
}

function withFound(profile: Profile, set: SettingsSet): Profile {
	const sets = profile.settings ?? [];
	const before = foundSet(profile);
	const channels = set.origin === 'entered' ? {} : set.channels;
	const isUsed = before && profile.meter?.some(({inForce}) => inForce === before.id);
	if (before && !isUsed)
		return {
			...profile,
			settings: sets.map(other => (other === before ? {...set, channels, id: before.id} : other)),
		};
	// Readings taken so far name the earlier set; it stays as it was for them.
	const taken = sets.filter(({id}) => /^found\d*$/.test(id)).length;
	return {
		...profile,
		settings: [...sets, {...set, channels, id: taken === 0 ? 'found' : `found${taken + 1}`}],
	};
}

function withTrim(profile: Profile, id: ChannelId, trimDb: number): Profile {
	const found = foundSet(profile)!;
	const channels = {...found.channels, [id]: {...found.channels[id], trimDb: {stepped: trimDb}}};
	return {
		...profile,
		settings: profile.settings!.map(set => (set === found ? {...set, channels} : set)),
	};
}
