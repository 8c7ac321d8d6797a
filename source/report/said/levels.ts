import {listed} from '../../profile/names.ts';
import {formatNumber} from '../../profile/units/decimalText.ts';
import type {LevelFacts} from '../../study/calibration/levels/facts.ts';
import {db, signedDb} from './figures.ts';
import type {Say} from './say.ts';
import type {Sentences} from './sentences.ts';

const whole = (hertz: number) => formatNumber(hertz, 0);

function noiseText(signal: LevelFacts['weighting-far-off']['signal']): string {
	return signal.kind === 'tone'
		? `a ${whole(signal.hertz)} Hz tone`
		: `pink noise ${whole(signal.fromHertz)}–${whole(signal.toHertz)} Hz`;
}

/** `at Sofa left, ` where levels are made for several seats. */
const at = ({seat}: {readonly seat?: string}, {name}: Say) =>
	seat === undefined ? '' : `at ${name(seat)}, `;

/** `target 75.0 − 75.3 − 0.5 = −0.8 dB`: target, less what was read, with what was in force. */
function sumText({targetDb, levelDb, gainInForceDb, wantedDb}: LevelFacts['trim-reason']): string {
	const one = (value: number) => formatNumber(value, 1);
	const inForce =
		Number(one(Math.abs(gainInForceDb))) === 0
			? ''
			: ` ${gainInForceDb < 0 ? '−' : '+'} ${one(Math.abs(gainInForceDb))} in force`;
	return `target ${one(targetDb)} − ${one(levelDb)} read${inForce} = ${signedDb(wantedDb)}`;
}

export const levelSentences: Sentences<LevelFacts> = {
	'background-too-high': (facts, say) => [
		`${at(facts, say)}${db(facts.levelDb)} is only ${db(facts.aboveDb)} above the background of ${db(facts.backgroundDb)}`,
		'Nothing can be told from it. Play the signal louder or make the room quieter, then read again.',
	],
	'background-near': (facts, say) => [
		`${at(facts, say)}${db(facts.aboveDb)} above the background; ${db(facts.takenOffDb)} taken off, but less than 6 dB apart that is unreliable`,
		'Play the signal louder and read again.',
	],
	'background-corrected': (facts, say) => [
		`${at(facts, say)}${db(facts.aboveDb)} above the background; ${db(facts.takenOffDb, 2)} taken off`,
	],
	'weighting-far-off': ({weighting, offDb, signal, ...where}, say) => [
		`${at(where, say)}with ${weighting} weighting the meter reads ${db(Math.abs(offDb))} ${offDb < 0 ? 'low' : 'high'} on ${noiseText(signal)}`,
		'Switch the meter to C and read again.',
	],
	'weighting-corrected': ({weighting, offDb, signal, ...where}, say) => [
		`${at(where, say)}${weighting} weighting reads ${db(Math.abs(offDb), 2)} ${offDb < 0 ? 'low' : 'high'} on ${noiseText(signal)}; corrected`,
	],
	'level-spread': ({levelDb, differenceDb, repeats, ...where}, say) => [
		`${at(where, say)}${db(levelDb)}, ${db(Math.abs(differenceDb))} ${differenceDb > 0 ? 'above' : 'below'} ${repeats === 1 ? 'its repeat' : `the middle of its ${repeats} repeats`}`,
		'Take it once more with the meter on a stand.',
	],
	'level-by-recording': ({against, sigmaDb, ...where}, say) => [
		`${at(where, say)}by the recording, against what the meter read of ${listed(against.map(id => say.name(id)))}: ± ${db(sigmaDb)}`,
		'A reading of its own is surer.',
	],
	'coherent-sum-assumed': ({gainDb, isOutdated}) => [
		isOutdated
			? 'read together under other delays or polarities than will stand, which says nothing of these'
			: 'read one at a time only',
		`They are assumed to add up in phase, ${db(gainDb)} above one of them; that is not yet known. Read them together after Dial-in.`,
	],
	'subs-beyond-coherent': ({excessDb}) => [
		`together they read ${db(excessDb)} more than they could make in phase`,
		'One of the readings is wrong, or settings were changed between them. Read each of them and all together once more.',
	],
	'subs-against-each-other': ({lackDb}) => [
		`together they make ${db(lackDb)} less than in phase`,
		'Their delays are set: the room sets them against each other at this seat.',
	],
	'subs-not-matched': () => [
		'read together only, so they are moved together',
		'Read each one alone to match them.',
	],
	'sub-far-off': ({turnDb, missingDb}) => [
		`${db(Math.abs(missingDb))} too ${missingDb > 0 ? 'soft' : 'loud'} for any entry to mend`,
		`Before anything else turn its own level knob ${turnDb > 0 ? 'up' : 'down'} by about ${db(Math.abs(turnDb), 0)}, then read it again; no other channel is moved to meet it.`,
	],
	'master-volume': ({changeDb, isHeard}) =>
		isHeard
			? [
					`turn the master volume ${changeDb > 0 ? 'up' : 'down'} by ${db(Math.abs(changeDb))} to meet the target`,
					'The trims match the channels to each other; the rest is common to all.',
				]
			: [
					`all channels end ${db(Math.abs(changeDb))} ${changeDb > 0 ? 'below' : 'above'} the target, the same for all: a matter of the master volume, too little to hear`,
				],
	'level-spread-does-not-fit': ({rangeDb, lostDb, outliers, turn}, {name}) => {
		const parts = outliers.map(
			({id, loudDb}) => `${name(id)} is ${db(Math.abs(loudDb))} too ${loudDb > 0 ? 'loud' : 'soft'}`,
		);
		return [
			`the levels differ by more than the trims’ ${db(rangeDb)} of range`,
			`Lost: ${db(lostDb)}.`,
			`With these settings ${listed(parts)} against most others.`,
			`To fix it: turn ${name(turn.id)} ${turn.way} at its own amplifier or input, or bring ${turn.way === 'down' ? 'the softer ones' : 'it'} nearer.`,
		];
	},
	'trim-reason': facts => {
		const {wantedDb, commonDb, steppedDb} = facts;
		const common =
			commonDb === 0 ? '' : `; ${signedDb(-commonDb)} common to all: ${signedDb(wantedDb - commonDb)}`;
		return [`${sumText(facts)}${common}, entered as ${signedDb(steppedDb)}`];
	},
};
