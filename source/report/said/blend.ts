import {listed, nameOf} from '../../profile/names.ts';
import type {Profile} from '../../profile/types.ts';
import {formatNumber, formatSigned} from '../../profile/units/decimalText.ts';
import type {BlendResult, WantedSetting} from '../../study/calibration/blend/blendResult.ts';
import type {Odds} from '../../study/calibration/blend/odds.ts';
import type {BlendBlock, BlendStep} from '../../study/calibration/blend/steps.ts';
import type {OfferedWay} from '../../study/calibration/blend/ways.ts';

/** Shown before the first tone. */
export const blendCautions = [
	'Tones sound softer than they are. Turn the master volume down before the first one, then up slowly to about 75 dB at the seat.',
	'Low tones move cones far. Stop at once when a speaker buzzes or clacks, and play no tone for longer than half a minute.',
	'Keep ears away from a speaker that is playing, and wear protection above 85 dB.',
] as const;

/** How a tone is read, and noise. */
export const howToRead =
	'Meter on a stand at ear height, C slow, and not touched until the last reading. Let it sound for 5 s, then read the mean of the next 5 s.';

const wayNames = {
	tones: 'Tones at three delays',
	search: 'The loudest of ten settings',
} as const;

export const wayName = ({way}: Pick<OfferedWay, 'way'>): string => wayNames[way];

const odds = ({wonPercent, lostPercent}: Odds) => `louder in ${wonPercent} %, softer in ${lostPercent} %`;

/** What a way takes: `35 readings, 3 changes, about 30 min`. */
export function wayCost({readings, changes, minutes}: OfferedWay): string {
	return `${readings} readings, ${changes} changes at a box, about ${minutes} min`;
}

/** What a way did in simulated rooms. */
export function wayOdds({known, hidden, rooms}: OfferedWay): string {
	return `In ${rooms} simulated rooms the mean of the fronts came out ${odds(known.fronts)}; where a latency or a turned lead was hidden ${odds(hidden.fronts)} (0.3 dB and more).`;
}

/** Where the blend is, in one sentence. */
export function statusSentence(profile: Profile, result: BlendResult): string {
	const {status, subs, wanted, blocks} = result;
	const gains = trialText(profile, result);
	const names = listed(subs.map(id => nameOf(profile, id)));
	switch (status) {
		case 'nothing':
			return 'There are no subs, or no front speaker with a crossover to blend them with.';
		case 'reading':
			return blocks.some(({steps}) => steps.some(({isTaken}) => isTaken))
				? 'The readings so far allow several answers, so none is given.'
				: 'Nothing is read through the crossover yet, so there is no answer.';
		case 'stands':
			return `Nothing promises to be worth a try: ${names} ${subs.length === 1 ? 'stays' : 'stay'} as distances put them.`;
		case 'to try':
			return `To try, not yet verified: ${offsetText(wanted)}${gainText(wanted)}.`;
		case 'kept':
			return `Kept: ${offsetText(wanted)}${gains}${wanted?.isDecided ? '. Decided since, and stands' : ''}.`;
		case 'put back':
			return `Tried and put back${gains}: it goes back to what stood before.`;
	}
}

function offsetText(wanted: WantedSetting | undefined): string {
	if (!wanted) return 'all subs together';
	const {setting} = wanted;
	const later = setting?.addedMs ?? 0;
	const parts = [
		...(Math.abs(later) < 0.005
			? []
			: [`${formatNumber(Math.abs(later), 1)} ms ${later > 0 ? 'later' : 'earlier'}`]),
		...(setting?.actions.some(({what}) => what === 'polarity') ? ['turned'] : []),
	];
	return `all subs together ${parts.length > 0 ? parts.join(' and ') : 'as they stand'}`;
}

function gainText(wanted: WantedSetting | undefined): string {
	if (!wanted?.gainDb) return '';
	const {value, sigma} = wanted.gainDb;
	return `; at these tones, at this seat, ${formatSigned(value, 1)} dB expected (± ${formatNumber(sigma, 1)})`;
}

function trialText(profile: Profile, {trial, centre}: BlendResult): string {
	const parts = [
		...(trial?.frontsGainDb === undefined
			? []
			: [`${formatSigned(trial.frontsGainDb, 1)} dB with all fronts`]),
		...(trial?.centreGainDb === undefined
			? []
			: [
					`${formatSigned(trial.centreGainDb, 1)} dB with ${centre === undefined ? 'one' : nameOf(profile, centre)} alone`,
				]),
	];
	return parts.length > 0 ? ` (${parts.join(', ')})` : '';
}

const blockSentences: Readonly<Record<BlendStep['part'], string>> = {
	tone: 'Tones into one front speaker after the other; everything stays plugged, the subs play along through bass management.',
	search: 'Noise about the crossover; everything plays.',
	before: 'Noise about the crossover; everything plays.',
	after: 'Noise about the crossover; everything plays.',
	pair: 'Tones into the LFE channel; both subs play, and nothing is unplugged.',
	'pair before':
		'Noise into the LFE channel, then noise about the crossover into the front speakers; everything plays.',
	'pair after':
		'Noise into the LFE channel, then noise about the crossover into the front speakers; everything plays.',
};

/** What a block of readings is played, and what stays as it is. */
export const blockSentence = ({part}: BlendBlock): string => blockSentences[part];

/** `80 Hz`, `noise 40–160 Hz`. */
export function blendSignalText(signal: BlendStep['signal']): string {
	return signal.kind === 'tone'
		? `${formatNumber(signal.hertz, 0)} Hz`
		: `noise ${formatNumber(signal.fromHertz, 0)}–${formatNumber(signal.toHertz, 0)} Hz`;
}

/** What is read: `80 Hz into Front left`, `noise 40–160 Hz into Front centre`. */
export function stepSentence(profile: Profile, {signal, playInto}: BlendStep): string {
	return `${blendSignalText(signal)} into ${listed(playInto.map(id => nameOf(profile, id)))}`;
}

/** Which setting a block is read under, in words. */
export function addedText(
	profile: Profile,
	{added: {delayMs, isTurned, subs}, part}: Pick<BlendBlock, 'added' | 'part'>,
): string {
	const which = part.endsWith('before') ? 'Before, ' : part.endsWith('after') ? 'After, ' : '';
	const delay =
		delayMs === 0 ? '' : `${formatNumber(Math.abs(delayMs), 1)} ms ${delayMs > 0 ? 'later' : 'earlier'}`;
	const parts = [delay, isTurned ? 'turned' : ''].filter(text => text !== '');
	const moved = subs ? listed(subs.map(id => nameOf(profile, id))) : 'all subs';
	return `${which}${parts.length === 0 ? 'as it stands' : `${moved} ${parts.join(', ')}`}`;
}

/** What is odd about the readings, and what does not count and why. */
export function readingSentences(
	profile: Profile,
	{tones, standsApart, isSetByRecording, pair, otherRelation, otherSettings, drowned, partly}: BlendResult,
): string[] {
	const place = (index: number) => `meter reading ${index + 1}`;
	const count = (indexes: readonly number[]) =>
		indexes.length === 1 ? '1 reading' : `${indexes.length} readings`;
	return [
		...tones.flatMap(({front, hertz, impossibleIndex}) =>
			impossibleIndex === undefined
				? []
				: [
						`${nameOf(profile, front)}, ${formatNumber(hertz, 0)} Hz: no two sounds make these levels at these delays. Likeliest wrong is ${place(impossibleIndex)}: another sound in the room, the volume moved, or a delay not typed in. Read this tone again.`,
					],
		),
		...(standsApart
			? [
					isSetByRecording
						? 'The subs stand to each other as the recording has it, which the meter cannot better: its ways move all of them together, from what distances give. Nothing is asked for.'
						: pair?.status === 'kept'
							? 'What was kept between the subs does not stand in the boxes yet. Dial it in first; then read.'
							: 'The set that stands sets the subs otherwise to each other than their distances do. Dial in what distances give first; then read.',
				]
			: []),
		...(otherRelation.length > 0
			? [
					`${count(otherRelation)}, taken while the subs stood otherwise to each other than they should, do not count.`,
				]
			: []),
		...(otherSettings.length > 0
			? [`${count(otherSettings)} of tones, taken with another crossover or other levels, do not count.`]
			: []),
		...(partly.length > 0
			? [
					`${count(partly)} of tones with only some of the subs, or with only some of them turned, ${partly.length === 1 ? 'does' : 'do'} not count: all play, turned together.`,
				]
			: []),
		...drowned.map(
			index =>
				`${place(index).replace('m', 'M')} is hardly above the background and was left out. Play it louder.`,
		),
	];
}
