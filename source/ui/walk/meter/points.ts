import type {Profile, Seat} from '../../../profile/types.ts';
import {walkAnswer, withAnswer} from '../answered.ts';
import type {Prompt} from '../prompt/prompt.ts';
import {choicePrompt} from '../prompt/single.ts';

/** Where the meter stands for each further point, by its number. */
const places = new Map([
	[2, '30 cm to the left of the ear'],
	[3, '30 cm to the right of the ear'],
	[4, '30 cm forward of the ear'],
	[5, '30 cm behind the ear'],
]);

const counts = ['1', '3', '5'] as const;

/**
Levels at further points around the seat: a question that waits until it is gone to, and once it is taken up the points.

@param at - Question for the speakers at one point, by its number and the words for where it is.
*/
export function pointPrompts(
	profile: Profile,
	seat: Seat,
	at: (point: number, place: string) => readonly Prompt<Profile>[],
): Prompt<Profile>[] {
	const id = 'meter:points';
	const answer = walkAnswer(profile, id);
	const readUpTo = Math.max(
		1,
		...(profile.meter ?? []).map(({point, seat: where}) => (where === seat.id && point) || 1),
	);
	const wanted = Math.max(Number(answer ?? 1), readUpTo);
	const chosen = counts.findIndex(count => Number(count) >= wanted);
	const offer = choicePrompt<Profile>({
		id,
		stop: 'meter',
		question: `How many points around ${seat.name}?`,
		about:
			'One point does not tell what a seat hears: ± 0.35 dB. Three or five, as their mean, are surer: ± 0.25 dB.',
		explain:
			'The ear itself, then 30 cm to its left and right; with five also 30 cm forward and back. Speakers only.',
		chosen: answer === undefined && readUpTo === 1 ? undefined : chosen,
		usual: 0,
		offers: counts.map(count => ({
			label: count === '1' ? 'The ear alone' : `${count} points`,
			put: subject => withAnswer(subject, id, count),
		})),
	});
	return [
		offer,
		...[...places].flatMap(([point, place]) =>
			point > wanted ? [] : at(point, place).map(prompt => ({...prompt, isOffered: true})),
		),
	];
}
