import {mostPairLossDb} from '../../profile/practice.ts';
import type {BlendFacts} from '../../study/calibration/blend/facts.ts';
import {db, ms, signedDb} from './figures.ts';
import type {Sentences} from './sentences.ts';

export const blendedSentences: Sentences<BlendFacts> = {
	blended: ({laterMs, isTurned, frontsGainDb, centreGainDb}) => {
		const gains = [frontsGainDb, centreGainDb].filter(gain => gain !== undefined);
		const gained = gains.length === 0 ? '' : ` (${gains.map(gain => signedDb(gain)).join(' and ')})`;
		return [
			`${ms(laterMs)} on top of what distances give${isTurned ? ', turned' : ''}, as verified with noise${gained}`,
		];
	},
	'pair-changed': ({laterMs, isTurned, lfeGainDb}) => {
		const change = [
			...(laterMs === 0 ? [] : [`${ms(Math.abs(laterMs))} ${laterMs > 0 ? 'later' : 'earlier'}`]),
			...(isTurned ? ['turned'] : []),
		];
		return [
			`${change.join(' and ')} against the other sub, on top of what distances give: ${signedDb(lfeGainDb)} through the LFE channel, and neither fronts nor centre softer by more than ${db(mostPairLossDb)}`,
		];
	},
	'blended-by-recording': ({gainDb, isVerified}) => [
		`as the recordings have it, ${signedDb(gainDb)} through the crossover ${isVerified ? 'heard' : 'expected; play and record once more when it is entered'}`,
	],
	'tones-not-used': () => [
		'tones were read through the crossover, but no setting of the subs was verified as louder: their delay and polarity are what distances give',
	],
	'polarity-at-sub': () => ['turn its polarity switch; neither receiver nor processor does it'],
};
