import type {ChannelId, Profile, SettingsSet} from '../../../profile/types.ts';
import {blendCautions} from '../../../report/said/blend.ts';
import {foundSet} from '../meter/meterPrompt.ts';
import type {Prompt} from '../prompt/prompt.ts';
import {choicePrompt, type OfferedChoice} from '../prompt/single.ts';

/** Id of the set in which every channel has the same delay. */
const alikeId = 'alike';

/** Sets with delays or distances, latest first: only with them the readings tell what to enter. */
function timedSets({settings = []}: Profile): SettingsSet[] {
	return settings
		.filter(({channels}) =>
			Object.values(channels).some(
				setting => setting.delayMs !== undefined || setting.distanceMetres !== undefined,
			),
		)
		.toReversed();
}

/** The set that stands in the boxes while tones are read, as the user told. */
export function toneSetOf(profile: Profile): SettingsSet | undefined {
	return profile.settings?.find(({id}) => id === profile.walk?.toneSet);
}

/** Asks which settings stand in the boxes; every tone reading refers to them. */
export function toneSetPrompt(profile: Profile): Prompt<Profile> {
	const sets = timedSets(profile).filter(({id}) => id !== alikeId);
	const chosen = toneSetOf(profile);
	const offers: OfferedChoice<Profile>[] = sets.map(set => ({
		label: `“${set.name ?? set.id}”`,
		hint: set.origin === 'solved' ? ticksText(set) : undefined,
		put: subject => withToneSet(subject, set.id),
	}));
	offers.push({
		label: 'All delays or distances set alike',
		hint: 'crossovers as suggested',
		put: subject => withToneSet(withAlike(subject), alikeId),
	});
	const at = chosen?.id === alikeId ? offers.length - 1 : sets.findIndex(({id}) => id === chosen?.id);
	return choicePrompt<Profile>({
		id: 'bass:set',
		stop: 'bass',
		question: 'Settings that stand in the boxes now',
		about:
			'Best: the set from the stop Dial-in, all of it typed in. Then leave it and the master volume alone.',
		explain: 'What the tones find is on top of the settings that stand, so they must be known.',
		caution: blendCautions.join(' '),
		chosen: at < 0 ? undefined : at,
		usual: 0,
		offers,
	});
}

function ticksText({dialledIn = []}: SettingsSet): string {
	return dialledIn.length === 0 ? 'not ticked as typed in' : `${dialledIn.length} ticked as typed in`;
}

function withToneSet(profile: Profile, toneSet: string): Profile {
	return {...profile, walk: {...profile.walk, toneSet}};
}

/** A set found in the boxes: no channel later than another, trims as told at the stop Meter. */
function withAlike(profile: Profile): Profile {
	if (profile.settings?.some(({id}) => id === alikeId)) return profile;
	const trims = foundSet(profile);
	const timing = profile.receiver?.timing;
	const same =
		timing?.kind === 'distance' ? {distanceMetres: {stepped: timing.minimumMetres}} : {delayMs: {stepped: 0}};
	const channels = Object.fromEntries(
		profile.channels.map(({id}) => [id, {...trims?.channels[id as ChannelId], ...same}]),
	);
	const outputs = profile.bassProcessor?.outputs.map(id => [
		id,
		{...trims?.outputs?.[id], delayMs: {stepped: 0}},
	]);
	const set: SettingsSet = {
		id: alikeId,
		name: 'All delays alike',
		origin: 'found',
		channels,
		...(outputs ? {outputs: Object.fromEntries(outputs)} : {}),
	};
	// Before any solved set, so that it never counts as what was decided.
	return {...profile, settings: [set, ...(profile.settings ?? [])]};
}
