import {formatNumber} from '../../profile/units/decimalText.ts';
import type {LengthSlip, TypedFacts} from '../../study/calibration/readings/facts.ts';
import {db} from './figures.ts';
import type {Sentences} from './sentences.ts';

/** The decimals that somebody typed, at most two. */
function decimalsTyped(value: number): number {
	return Number.isInteger(value) ? 0 : Math.min(2, (String(value).split('.')[1] ?? '').length);
}

function timeText(hours: number): string {
	return hours >= 1
		? `${formatNumber(hours, hours < 3 ? 1 : 0)} hours`
		: `${formatNumber(Math.max(1, hours * 60), 0)} minutes`;
}

const slipTexts: Readonly<Record<LengthSlip, string>> = {
	'one-foot': 'That is just one foot.',
	'one-metre': 'That is just one metre.',
	'ten-centimetres': 'That is just ten centimetres.',
	'feet-as-metres': 'Feet taken for metres would explain it.',
	'metres-as-feet': 'Metres taken for feet would explain it.',
};

const slipText = (slip: LengthSlip | undefined) => (slip === undefined ? [] : [slipTexts[slip]]);

/** What is said at once about a reading that was just typed. */
export const typedSentences: Sentences<TypedFacts> = {
	'level-impossible': ({levelDb, meantDb}) => {
		const typed = db(levelDb, decimalsTyped(levelDb));
		return meantDb === undefined
			? [`${typed} cannot be the level of a test signal`, 'Read the meter again.']
			: [`${typed}?`, `Did you mean ${db(meantDb)}?`];
	},
	'background-impossible': ({levelDb}) => [
		`background: ${db(levelDb)} cannot be`,
		'Read the meter again with the noise off.',
	],
	'background-loud': ({seat, levelDb}, {name}) => [
		`background at ${name(seat)}: ${db(levelDb)} is loud for a room at rest`,
		'Was the test signal still on?',
	],
	'level-drowned': ({levelDb, aboveDb, backgroundDb, isLost}) => [
		`${db(levelDb)}, only ${db(aboveDb)} above the background of ${db(backgroundDb)}`,
		isLost ? 'Nothing can be told from it.' : 'That is unreliable.',
		'Play the signal louder or make the room quieter.',
	],
	'level-far-from-repeats': ({levelDb, differenceDb, repeats}) => [
		`${db(levelDb)}, ${db(Math.abs(differenceDb))} ${differenceDb > 0 ? 'above' : 'below'} its repeat${repeats > 1 ? 's' : ''}`,
		'Take it once more with the meter on a stand.',
	],
	'level-far-from-others': ({levelDb, differenceDb, others}) => [
		`${db(levelDb)}, ${db(Math.abs(differenceDb), 0)} ${differenceDb > 0 ? 'above' : 'below'} the other channel${others > 1 ? 's' : ''}`,
		'Is the signal on this channel, and at the same master volume? If so, keep it.',
	],
	'weighting-a-on-sub': ({lowDb}) => [
		`with A weighting the meter reads the sub ${db(lowDb)} low and mostly hears something else`,
		'Switch the meter to C and read again.',
	],
	loud: ({levelDb, hours}) => [
		db(levelDb),
		`Ears bear this level for about ${timeText(hours)} a day. Turn the noise down between readings, or wear ear protection.`,
	],
	'tape-too-short': ({metres}, {length}) => [
		`${length(metres)} is closer than a head fits`,
		'Check the unit, then measure again.',
	],
	'tape-beyond-room': ({metres, room, meant}, {length}) => [
		room
			? `${length(metres)} in a room ${length(room.lengthMetres)} long; no straight line in it exceeds ${length(room.diagonalMetres)}`
			: `${length(metres)} away, longer than a home room`,
		meant ? `Was it read in ${meant.readIn}? Then it is ${length(meant.metres)}.` : 'Measure it again.',
	],
	'tape-far-from-repeats': ({metres, differenceMetres, repeats, middleMetres, slip}, {length}) => [
		`${length(metres)}, ${length(Math.abs(differenceMetres))} ${differenceMetres > 0 ? 'longer' : 'shorter'} than ${repeats > 1 ? 'its repeats' : 'its repeat'} of ${length(middleMetres)}`,
		...slipText(slip),
		'Measure it once more.',
	],
	'tape-left-right': ({metres, partner, partnerMetres, swappedMetres, slip}, {length, name}) => [
		`${length(metres)}, but ${name(partner)} is at ${length(partnerMetres)}`,
		...(swappedMetres === undefined
			? slipText(slip)
			: [`Two swapped digits would make it ${length(swappedMetres)}.`]),
		'If they really stand that differently, keep it; else measure again.',
	],
};
