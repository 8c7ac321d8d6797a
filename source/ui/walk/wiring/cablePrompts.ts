import {isOverhead} from '../../../profile/channels.ts';
import type {Profile} from '../../../profile/types.ts';
import {conductorText} from '../../../profile/units/conductor.ts';
import {formatLength, readLength} from '../../../profile/units/length.ts';
import {type ConductorChoice, readConductor} from '../../../profile/units/readConductor.ts';
import {readEnd} from '../../../study/wiring/ends.ts';
import {straightLineMetres} from '../../../study/wiring/lengths.ts';
import type {Cable} from '../../../study/wiring/result.ts';
import {lengthUnitOf, unitWords} from '../lengthUnits.ts';
import type {Prompt} from '../prompt/prompt.ts';
import {choicePrompt, textPrompt, valuePrompt} from '../prompt/single.ts';
import {takenFrom} from '../prompt/taken.ts';
import {farName, withCable} from './cables.ts';
import {positionsOf} from './wiringOf.ts';

const longestLabel = 120;
const ladder = 'A ladder on firm ground and somebody holding it.';
const unplugged = 'Everything switched off and unplugged before a cable is connected.';

function isUp({from, to}: Cable): boolean {
	return [from, to].some(end => isOverhead(readEnd(end).box));
}

/** What is asked of one cable while it is run: its length, its conductor, and whether it lies. */
export function cablePrompts(profile: Profile, cable: Cable): Prompt<Profile>[] {
	return [
		runPrompt(profile, cable),
		...(cable.kind === 'speaker' ? [conductorPrompt(profile, cable)] : []),
		laidPrompt(profile, cable),
	];
}

function runPrompt(profile: Profile, cable: Cable): Prompt<Profile> {
	const unit = lengthUnitOf(profile);
	const metres = profile.wiring?.connections?.find(({id}) => id === cable.id)?.runMetres;
	return {
		id: `wiring:run:${cable.id}`,
		stop: 'wiring',
		question: `${farName(profile, cable)}: length of the cable’s way`,
		about: `Tape along the route, ${cable.from} to ${cable.to}; slack is added.`,
		explain: 'What to cut and to buy follows from it, and how thick the conductor must be.',
		kind: 'reading',
		unit: unitWords[unit],
		isRequired: false,
		values: metres === undefined ? [] : [formatLength(metres, unit)],
		isAnswered: metres !== undefined,
		...(isUp(cable) && {caution: ladder}),
		take: (subject, text) =>
			takenFrom(
				readLength(text, unit),
				value => withCable(subject, cable.id, {runMetres: value.metres}),
				value => ({doubt: shortDoubt(subject, cable, value.metres)}),
			),
	};
}

/** A way shorter than the straight line between its ends, where the tape has told both. */
function shortDoubt(profile: Profile, cable: Cable, metres: number): string | undefined {
	const hasPlaces = (profile.wiring?.equipment ?? []).length > 0;
	if (!hasPlaces) return undefined;
	const straight = straightLineMetres(cable, profile, positionsOf(profile));
	if (straight === undefined || straight <= metres) return undefined;
	return `Its ends stand ${formatLength(straight, lengthUnitOf(profile))} apart in a straight line.`;
}

function conductorPrompt(profile: Profile, cable: Cable): Prompt<Profile> {
	const {conductor, needs, cutMetres, impedanceOhms} = cable;
	const enough =
		needs && cutMetres !== undefined
			? `${conductorText(needs)} is enough for ${formatLength(cutMetres, lengthUnitOf(profile))} at ${impedanceOhms} Ω.`
			: 'As printed on the reel: 16 AWG or 2.5 mm².';
	return valuePrompt<Profile, ConductorChoice>({
		id: `wiring:conductor:${cable.id}`,
		stop: 'wiring',
		question: `${farName(profile, cable)}: which conductor?`,
		about: enough,
		explain: 'Both wires together should stay within 5 % of the speaker’s impedance.',
		unit: 'AWG or mm²',
		shown: conductor && conductorText(conductor),
		read: readConductor,
		put: (subject, {conductor: read}) =>
			withCable(subject, cable.id, {awg: undefined, areaSquareMillimetres: undefined, ...read}),
	});
}

function laidPrompt(profile: Profile, cable: Cable): Prompt<Profile> {
	const entered = profile.wiring?.connections?.find(({id}) => id === cable.id);
	const isSpeaker = cable.kind === 'speaker';
	const offers = [
		{
			label: isSpeaker ? 'Laid, plus to plus at both ends' : 'Laid',
			change: {done: true, polarity: isSpeaker ? ('checked' as const) : undefined},
		},
		{label: 'Not yet', change: {done: false, polarity: undefined}},
		...(isSpeaker
			? [{label: 'Laid, plus and minus swapped', change: {done: true, polarity: 'reversed' as const}}]
			: []),
	];
	const chosen =
		entered?.done === undefined ? undefined : entered.done ? (entered.polarity === 'reversed' ? 2 : 0) : 1;
	return choicePrompt<Profile>({
		id: `wiring:laid:${cable.id}`,
		stop: 'wiring',
		question: `${farName(profile, cable)}: is its cable laid?`,
		about: `${cable.from} to ${cable.to}.`,
		explain: 'What lies is no longer bought; follow the cable by hand to tell its ends.',
		caution: isUp(cable) ? `${unplugged} ${ladder}` : unplugged,
		chosen,
		offers: offers.map(({label, change}) => ({
			label,
			put: subject => withCable(subject, cable.id, change),
		})),
	});
}

/** The words on both ends of a cable; asked after all else, since most cables are well named by what they lead to. */
export function labelPrompt(profile: Profile, cable: Cable): Prompt<Profile> {
	const label = profile.wiring?.connections?.find(({id}) => id === cable.id)?.label;
	return textPrompt<Profile>({
		id: `wiring:label:${cable.id}`,
		stop: 'wiring',
		question: `${farName(profile, cable)}: words on its label`,
		about: `Enter leaves ${cable.id}. Keep writes the labels to print.`,
		explain: 'The same words go on both ends, with where this end and the other one belong.',
		shown: label,
		put: (subject, text) => withCable(subject, cable.id, {label: text.slice(0, longestLabel)}),
	});
}
