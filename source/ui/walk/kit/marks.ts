import {wireSystemOf} from '../../../profile/ask/wireSystem.ts';
import type {Kit, LengthUnit, Profile} from '../../../profile/types.ts';
import type {Prompt} from '../prompt/prompt.ts';
import {choicePrompt} from '../prompt/single.ts';

const tapes: ReadonlyArray<readonly [LengthUnit, string]> = [
	['ft-in', 'Feet and inches'],
	['ft', 'Decimal feet'],
	['m', 'Metres'],
	['cm', 'Centimetres'],
];
const wires: ReadonlyArray<readonly [NonNullable<Kit['wireSystem']>, string, string]> = [
	['metric', 'Square millimetres', '2.5 mm²'],
	['awg', 'Gauge numbers', '14 AWG'],
];

/** How the tape is marked: swapped digits are looked for as it shows them, whatever unit lengths are shown in. */
export function tapeMarkPrompt(profile: Profile): Prompt<Profile> {
	const now = tapes.findIndex(([unit]) => unit === profile.kit?.tapeShownIn);
	return choicePrompt<Profile>({
		id: 'kit:tapeShownIn',
		stop: 'kit',
		question: 'How is the tape marked?',
		about: 'What is printed on it, whatever unit lengths are shown in.',
		explain: 'Digits that were swapped are looked for as the tape shows them.',
		chosen: now < 0 ? undefined : now,
		usual: 2,
		offers: tapes.map(([tapeShownIn, label]) => ({
			label,
			also: [tapeShownIn],
			put: subject => ({...subject, kit: {...subject.kit, tapeShownIn}}),
		})),
	});
}

/** How conductors are sold where they are bought: the shopping list follows. */
export function wirePrompt(profile: Profile): Prompt<Profile> {
	const now = wires.findIndex(([system]) => system === profile.kit?.wireSystem);
	return choicePrompt<Profile>({
		id: 'kit:wireSystem',
		stop: 'kit',
		question: 'How is wire sold?',
		about: 'What stands on the reel.',
		explain: 'Cables are told, and what to buy is listed, in these sizes.',
		chosen: now < 0 ? undefined : now,
		usual: wires.findIndex(([system]) => system === wireSystemOf(profile)),
		offers: wires.map(([wireSystem, label, hint]) => ({
			label,
			hint,
			put: subject => ({...subject, kit: {...subject.kit, wireSystem}}),
		})),
	});
}
