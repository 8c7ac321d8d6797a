import type {MissingFacts} from '../../study/calibration/readings/facts.ts';
import type {Sentences} from './sentences.ts';

export const missingSentences: Sentences<MissingFacts> = {
	'distance-missing': ({seat, isSub}, {name}) => [
		`no distance to ${name(seat)} yet`,
		`Measure from the middle of the ${isSub ? 'sub’s cone' : 'speaker’s front'} to the ear.`,
	],
	'level-missing': ({seat}, {name}) => [
		`no level at ${name(seat)} yet`,
		'Read the meter at ear height with the test signal on it alone.',
	],
	'level-decides-nothing': () => ['no further reading of the level needed'],
	'level-take-again': ({chance}) => [
		'take the level again',
		`It moves the result by a step in ${Math.round(chance * 10)} of 10 cases.`,
	],
};
