import {listed} from '../../profile/names.ts';
import type {ReadingFacts, SlipCause, SurveyFacts} from '../../study/survey/facts.ts';
import {conventionText} from './conventions.ts';
import type {Say} from './say.ts';
import type {Sentences, Words} from './sentences.ts';

const slips: Readonly<Record<string, string>> = {
	'one-foot': 'one foot',
	'ten-centimetres': 'ten centimetres',
	'one-inch': 'one inch',
	'one-metre': 'one metre',
	'half-metre': 'half a metre',
	'six-inches': 'six inches',
};

function causeText({code, isLong, end, instead}: SlipCause, {name}: Say): string {
	const other = instead === undefined ? '' : name(instead);
	switch (code) {
		case 'feet-as-metres':
			return 'read in feet and entered as metres';
		case 'metres-as-feet':
			return 'read in metres and entered as feet';
		case 'swapped-digits':
			return 'two digits swapped';
		case 'tape-case':
			return 'the length of the tape’s case left out';
		case 'corner':
			return `taken to the corner with the ${other} instead of square to the wall`;
		case 'left-for-right':
		case 'other-thing':
			return `taken ${end ?? 'to'} ${other} instead`;
		default:
			return `${slips[code] ?? code} too ${isLong ? 'long' : 'short'}`;
	}
}

/** Ends, such as "Front left to left wall". */
const endsText = ({from, to}: {readonly from: string; readonly to: string}, {name}: Say) =>
	`${name(from)} to ${name(to)}`;

/** A reading without the name of its first end: "2.87 m to left wall". */
const readText = ({to, metres}: ReadingFacts, {length, name}: Say) => `${length(metres)} to ${name(to)}`;

/** Step that an uncertainty allows to be shown: centimetres above a centimetre. */
const shownStep = (sigmaMetres: number) => (sigmaMetres < 0.01 ? undefined : 0.01);

function blunderWords(facts: SurveyFacts['tape-blunder'], say: Say): Words {
	const {errorMetres, expectedMetres, expectedSigmaMetres, causes, alternatives} = facts;
	const step = shownStep(expectedSigmaMetres);
	const difference = say.length(Math.abs(errorMetres), step);
	const side = errorMetres > 0 ? 'longer' : 'shorter';
	const likely = causes
		.slice(0, 2)
		.map(cause => `${causeText(cause, say)} (then ${say.length(cause.metres)})`);
	const others = alternatives.map(ends => endsText(ends, say));
	const own = endsText(facts, say);
	return [
		`${readText(facts, say)} is ${difference} ${side} than the other readings allow, which give ${say.length(expectedMetres, step)}`,
		...(likely.length > 0 ? [`Perhaps ${likely.join(', or ')}.`] : []),
		...(others.length === 1
			? [`It is one of these two: ${own}, or ${others[0]}. Retake both.`]
			: others.length > 1
				? [`It could also be ${listed(others)}. Retake ${own} first.`]
				: ['Retake it.']),
	];
}

function openWords(state: string, {missing, assumedBy}: SurveyFacts['tape-weak'], {name}: Say): Words {
	const ends = listed(missing.map(end => name(end)));
	const fix =
		missing.length === 0
			? 'Measure the reference seat and the room first.'
			: `${missing.length === 1 ? 'One more reading decides' : `${missing.length} more readings decide`}: to ${ends}.`;
	const assumed = {
		side: 'Two places fit its readings; it is drawn where it usually stands.',
		direction: 'Its direction is assumed, not measured.',
	};
	return [state, ...(assumedBy ? [assumed[assumedBy]] : []), fix];
}

const unusable = (facts: ReadingFacts, say: Say, why: string, ...more: string[]): Words => [
	`${readText(facts, say)}: ${why}`,
	...more,
];

export const surveySentences: Sentences<SurveyFacts> = {
	'tape-none': () => ['no tape readings yet', 'Begin with the room’s width and length, then the seat.'],
	'tape-blunder': blunderWords,
	'tape-same-ends': (facts, say) =>
		unusable(facts, say, 'both ends are the same thing', 'Name the other end.'),
	'tape-unknown-end': (facts, say) =>
		facts.isLfe
			? unusable(facts, say, `${facts.end} feeds several subs or none`, 'Name the sub.')
			: unusable(facts, say, `${facts.end} is neither a point nor a plane of this room`),
	'tape-planes-meet': (facts, say) =>
		unusable(facts, say, 'the two meet in a corner and have no distance between them'),
	'tape-slope-height': (facts, say) =>
		unusable(facts, say, 'the ceiling slopes', 'State its height at the two walls instead.'),
	'tape-zero': (facts, say) =>
		unusable(
			facts,
			say,
			facts.arePlanes
				? 'two walls, or floor and ceiling, cannot be in the same place'
				: 'two things cannot stand in the same place',
		),
	'tape-more': ({count}) => [`${count} more readings like these are not listed`],
	'tape-many': () => [
		'still more readings contradict each other than could be sorted out',
		'Check the unit, and that all were taken in this room.',
	],
	'tape-global': () => [
		'the readings as a whole disagree more than their uncertainty allows, though none stands out',
		'Check where the tape is held at each speaker and at the seat.',
	],
	'tape-one-plane': ({plane}, {name}) => [
		`all readings are to the ${name(plane)}`,
		'They tell one coordinate of each thing and nothing of the other two.',
	],
	'tape-apart': () => [
		'measured to each other, but nothing ties them to the rest',
		'A distance from one of them to the seat, and one to a wall, does.',
	],
	'tape-open': ({begin}, say) => [
		'the tape does not tell yet where these stand',
		begin
			? `Take ${endsText(begin, say)} first.`
			: 'Each needs its height and its distances to two walls, or to the seat and one wall.',
	],
	'tape-weak': (facts, say) => openWords('known only roughly', facts, say),
	'tape-undetermined': (facts, say) => openWords('not determined by its readings', facts, say),
	'tape-unmeasured': (facts, say) => openWords('no reading yet', facts, say),
	'tape-unchecked': () => [
		'not checked yet',
		'A slip of a foot in one of the readings could stay unnoticed.',
	],
	'tape-mirror-room': () => ['two places fit the readings; one is outside the room, so the other holds'],
	'tape-mirror-side': () => [
		'two places fit the readings; it is drawn on the side where this channel belongs, and nothing is judged from it',
	],
	'tape-mirror': () => [
		'two places fit the readings and nothing decides',
		'One more reading to a wall does.',
	],
	'tape-free': ({conventions}, say) => [
		`the walls do not hold the drawing: ${listed(conventions.map(each => conventionText(each, say)))}`,
		'Distances between things are not touched by that; left and right follow the channels’ names.',
	],
};
