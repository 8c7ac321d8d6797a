import {formatNumber, formatSigned} from '../../profile/units/decimalText.ts';
import type {
	CrossoverFacts,
	CrossoverReasonFacts,
	FullRangeFacts,
} from '../../study/calibration/crossover/facts.ts';
import {db, ms} from './figures.ts';
import type {Sentences} from './sentences.ts';

const inHz = (value: number) => `${formatNumber(value, Number.isInteger(value) ? 0 : 1)} Hz`;
const wholeHz = (value: number) => `${formatNumber(value, 0)} Hz`;

const shapeText = ({kind, order}: CrossoverFacts['high-pass-assumed']['taken']) =>
	`${kind === 'butterworth' ? 'Butterworth' : 'Linkwitz-Riley'} of order ${order}`;

const limitName = (isAssumed: boolean) =>
	isAssumed ? 'limit taken for an unknown speaker' : 'speaker’s limit';

/** When the sub should arrive, in words. */
function arrivalText(subDelayMs: number): string {
	const size = ms(Math.abs(subDelayMs));
	return size === ms(0)
		? 'together with the speaker'
		: `${size} ${subDelayMs < 0 ? 'before' : 'after'} the speaker`;
}

/** Why a choice stands where it does. */
export const crossoverReasonSentences: Sentences<CrossoverReasonFacts & FullRangeFacts> = {
	'hole-below-limit': ({hertz, limitHertz, isAssumed}) => [
		`${inHz(hertz)} lies below the ${limitName(isAssumed)}, ${wholeHz(limitHertz)}`,
		'A hole stays between speaker and sub.',
	],
	'drive-at-limit': ({limitHertz, isAssumed, takenOffDb}) => [
		`the ${limitName(isAssumed)} is ${wholeHz(limitHertz)} (−3 dB); there the high-pass takes ${db(takenOffDb)} off`,
	],
	'cone-spared': ({reliefDb}) => [`cone movement falls by ${db(reliefDb)} against full range`],
	'ripple-on-paper': ({rippleDb, fromHertz, toHertz, subDelayMs, isInverted}) => [
		`on paper speaker and sub add up within ${db(rippleDb)} from ${inHz(fromHertz)} to ${inHz(toHertz)}, with the sub arriving ${arrivalText(subDelayMs)}${isInverted ? ', inverted' : ''}`,
	],
	'ripple-when-late': ({lateMs, addedDb}) => [
		`${formatNumber(lateMs, 0)} ms off costs ${db(addedDb)} more ripple`,
	],
	'sub-located': ({aboveHertz, isPlain}) => [
		isPlain
			? `above ${inHz(aboveHertz)} the ear locates the sub`
			: `above ${inHz(aboveHertz)} the ear begins to locate the sub`,
	],
	'no-sub': () => ['no sub: bass has nowhere else to go'],
	'full-range-not-offered': () => ['the receiver offers no full-range setting'],
	'limit-not-known': () => ['the speaker’s limit is not known'],
	'as-deep-as-sub': ({limitHertz}) => [
		`the speaker reaches ${wholeHz(limitHertz)} (−3 dB), as deep as the sub`,
	],
	'deep-enough': ({limitHertz}) => [
		`the speaker reaches ${wholeHz(limitHertz)} (−3 dB)`,
		'A high-pass still spares it and lets the sub’s place smooth the bass.',
	],
	'not-deep-enough': ({limitHertz, neededHertz}) => [
		`the speaker ends at ${wholeHz(limitHertz)} (−3 dB), above ${inHz(neededHertz)}`,
	],
};

export const crossoverSentences: Sentences<CrossoverFacts> = {
	...crossoverReasonSentences,
	'crossover-step': ({hertz, rippleDb, driveDb, coneDb, subDelayMs, isBelowLimit, isLocated}) => {
		const change = (value: number, unit: string) => `${formatSigned(value, 1)} ${unit}`;
		const parts = [
			`ripple ${change(rippleDb, 'dB')}`,
			`drive at the limit ${change(driveDb, 'dB')}`,
			`cone movement ${change(coneDb, 'dB')}`,
			`delay wanted ${change(subDelayMs, 'ms')}`,
		];
		const below = isBelowLimit ? '; below the speaker’s limit' : '';
		const place = isLocated ? '; you hear more easily where the sub stands' : '';
		return [`${inHz(hertz)}: ${parts.join(', ')}${below}${place}`];
	},
	'crossover-choices-unknown': () => [
		'the receiver is not described, so common crossover choices were ranked',
		'Enter its choices under Kit.',
	],
	'speaker-limit-unknown': ({takenHertz}) => [
		`no low limit given, ${wholeHz(takenHertz)} (−3 dB) taken`,
		'Enter the limit from the data sheet under Kit, K in the walk.',
	],
	'sub-low-limit-unknown': ({takenHertz}) => [
		`no low limit of the subs given; ${inHz(takenHertz)} vented taken for their phase`,
	],
	'sub-upper-limit-unknown': () => ['no upper limit of the subs given; taken to reach above every crossover'],
	'filter-does-not-exist': ({filter, order, taken}) => [
		`the receiver’s ${filter} is given as Linkwitz-Riley of order ${order}, which does not exist`,
		`${shapeText(taken)} was taken; correct it under Kit.`,
	],
	'high-pass-assumed': ({taken}) => [
		`the receiver’s high-pass is not stated, ${shapeText(taken)} taken (common practice, no source)`,
	],
	'low-pass-assumed': ({taken}) => [
		`the receiver’s low-pass is not stated, ${shapeText(taken)} taken (common practice, no source)`,
	],
	'crossover-below-limit': ({limitHertz, hertz}) => [
		`limit ${wholeHz(limitHertz)}, above every crossover that can be set; ${inHz(hertz)} is the nearest`,
		'Bass between them is missing.',
	],
	'lfe-low-pass-low': ({hertz, topHertz}) => [
		`the highest choice for the LFE low-pass is ${inHz(hertz)}`,
		`Content up to ${inHz(topHertz)} is cut.`,
	],
};
