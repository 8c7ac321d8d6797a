import type {HeadroomFacts} from '../../study/calibration/headroom/facts.ts';
import {signedDb} from './figures.ts';
import type {Sentences} from './sentences.ts';

export const headroomSentences: Sentences<HeadroomFacts> = {
	'headroom-unknown': ({missing, needsTape}) => [
		`headroom not told at every seat, ${missing.join(', ')} missing`,
		`Enter it under ${needsTape ? 'Kit or Tape' : 'Kit'}.`,
	],
	'sensitivity-kind-unknown': () => [
		'sensitivity taken as for 2.83 V',
		'If it is for 1 W, a 4 ohm speaker reaches 3 dB more than shown.',
	],
	'headroom-nothing-known': () => [
		'no channel has sensitivity, amplifier power and distance, so no headroom can be told',
		'Enter them for one channel at least.',
	],
	'first-to-give-out': ({seat, masterVolumeDb}, {name}) =>
		masterVolumeDb < 0
			? [
					`first to give out, at ${name(seat)} and a master volume of ${signedDb(masterVolumeDb, 0)}`,
					'Full-scale peaks stay clean up to there. Stay below it, sit nearer, or give it more power.',
				]
			: [
					`first to give out, at ${name(seat)} and only at a master volume of ${signedDb(masterVolumeDb, 0)}`,
					'Reference gain is within reach.',
				],
	'sensitivity-assumes': () => [
		'sensitivity is a mean over a band, one speaker in the open on its axis, cold',
		'In a room the level falls by less than 6 dB per doubling of distance, so speakers may do better; hot voice coils lose 1 to 3 dB at full power, so they may do worse (common practice, no source). Count on ±3 dB.',
	],
	'sub-load': ({redirected}) => [
		`the subs carry LFE${redirected > 0 ? ` and the bass of ${redirected} high-passed channels` : ''}, added on energy`,
		'All at full scale and in phase at once would ask for more; programme hardly ever does (common practice, no source).',
	],
	'full-range-excursion': () => [
		'cones of full-range channels must do the bass too, which sensitivity and watts do not tell',
		'They may give out earlier than shown.',
	],
};
