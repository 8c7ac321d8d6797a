import {formatSigned} from '../../profile/units/decimalText.ts';
import type {GeneralFacts} from '../../study/calibration/facts.ts';
import type {Sentences} from './sentences.ts';

export const generalSentences: Sentences<GeneralFacts> = {
	'nothing-measured': () => [
		'nothing is measured yet',
		'Take the distance of each speaker to the reference seat, then the level of each.',
	],
	'receiver-assumed': ({stepMs, stepDb, minimumDb, maximumDb}) => [
		'no receiver is described',
		`Delays in steps of ${stepMs} ms and trims in steps of ${stepDb} dB from ${formatSigned(minimumDb, 0)} to ${formatSigned(maximumDb, 0)} dB are assumed. Enter its steps and limits to get what it can take.`,
	],
	'temperature-assumed': () => [
		'no air temperature is given; 20 °C is assumed',
		'3 °C more or less change a delay by half a per cent.',
	],
	'trims-assumed-zero': ({told}) => [
		`${told === 'none' ? 'the level readings do not' : 'some level readings do not'} say which trims stood; 0 dB is assumed`,
		'If trims were set then, enter them with the readings.',
	],
	'output-unknown': () => [
		'the bass processor’s output is not described, so the sub counts as connected directly',
	],
};
