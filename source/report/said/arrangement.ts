import {formatNumber} from '../../profile/units/decimalText.ts';
import type {ArrangementFacts} from '../../study/arrangement/facts.ts';
import {db} from './figures.ts';
import type {Sentences} from './sentences.ts';

const things: Readonly<Record<ArrangementFacts['arrange-stands-on']['kind'], string>> = {
	door: 'a door',
	opening: 'an opening',
	window: 'a window',
	radiator: 'a radiator',
	furniture: 'furniture that stays',
	walkway: 'a walkway',
	notHere: 'a place marked “not here”',
};

const count = (lifted: number) =>
	lifted === 1 ? 'one thing' : lifted === 2 ? 'two things' : `${lifted} things`;

export const arrangementSentences: Sentences<ArrangementFacts> = {
	'arrange-assumed': ({what, decaySeconds}) => [
		`${what.join(' and ')} stand where they usually do, since the tape has not told their places`,
		...(decaySeconds === undefined
			? []
			: [`The decay is taken as 0.25 to 0.65 s in turn, around ${formatNumber(decaySeconds, 2)} s.`]),
	],
	'arrange-outside': () => [
		'outside the walls or above the ceiling',
		'Correct its place or the size of the room: nothing can be said of the bass there.',
	],
	'arrange-no-place': () => [
		'no wall is free for a subwoofer',
		'Take off a “not here”, or say which of what stands there can be lifted.',
	],
	'arrange-feature-impossible': ({index, kind, fault, metres}, say) => [
		`entry ${index + 1} of what stands in the room (${things[kind]}) ${
			fault === 'beyondWall'
				? `reaches to ${say.length(metres)}, beyond its wall`
				: fault === 'noWidth'
					? `ends at ${say.length(metres)}, before it begins`
					: `has its upper edge at ${say.length(metres)}, below its lower one`
		}`,
		'Measure it again from the wall that it is counted from.',
	],
	'arrange-stands-on': ({kind, note}) => [
		`stands on ${things[kind]}${note === undefined ? '' : ` (${note})`}`,
	],
	'arrange-nothing-better': () => [
		'as it stands: nothing better is certain',
		'What the model promises lies within what it cannot know.',
	],
	'arrange-better': ({lifted, gainDb, seats}) => [
		lifted === 0
			? `delay, gain and polarity alone ${seats > 1 ? 'bring the seats together' : 'make the bass more even'} by ${db(gainDb)}`
			: `lifting ${count(lifted)} ${seats > 1 ? 'brings the seats together' : 'makes the bass more even'} by ${db(gainDb)}, sure`,
	],
	'arrange-unclear': ({lifted, gainDb}) => [
		`lifting ${count(lifted)} may bring ${db(gainDb)}; the draws do not agree on it`,
	],
	'arrange-one-sub': () => [
		'with one subwoofer no setting brings the seats together',
		'Its place can; a second one does more than anything else.',
	],
};
