import {subsOf} from '../../../profile/ask/subs.ts';
import {assumedSubLimitHertz, lfeTopHertz, usualHighPass, usualLowPass} from '../../../profile/practice.ts';
import type {ChannelId, Profile} from '../../../profile/types.ts';
import type {Remark} from '../result.ts';

type Judged = {
	readonly hertz: number | 'full';
	readonly limitAssumed: boolean;
	readonly limitHertz: number;
	readonly ranking: ReadonlyArray<{readonly hertz: number; readonly belowLimit: boolean}>;
};

const isOddLinkwitzRiley = (shape?: {readonly kind: string; readonly order: number}) =>
	shape?.kind === 'linkwitz-riley' && shape.order % 2 === 1;

/** What there is to say about a crossover suggestion as a whole and channel by channel. */
export function crossoverRemarks(
	profile: Profile,
	channels: ReadonlyMap<ChannelId, Judged>,
	lfeLowPassHertz: number | undefined,
): Remark[] {
	const remarks: Remark[] = [];
	const crossover = profile.receiver?.crossover;
	if (!profile.receiver) {
		remarks.push({
			kind: 'advice',
			code: 'crossover-choices-unknown',
			text: 'Receiver: not described, so common crossover choices were ranked. Enter its choices under Kit.',
		});
	}

	const subs = subsOf(profile);
	if (subs.length > 0) {
		const unknown = [...channels].filter(([, {limitAssumed}]) => limitAssumed).map(([id]) => id);
		if (unknown.length > 0) {
			remarks.push({
				kind: 'doubt',
				code: 'speaker-limit-unknown',
				text: `${unknown.join(', ')}: no low limit given, ${channels.get(unknown[0]!)!.limitHertz.toFixed(0)} Hz (−3 dB) taken. Enter the limit from the data sheet.`,
			});
		}

		if (!subs.some(({lowLimitHertz}) => lowLimitHertz !== undefined)) {
			remarks.push({
				kind: 'note',
				code: 'sub-low-limit-unknown',
				text: `Subs: no low limit given; ${assumedSubLimitHertz} Hz vented taken for their phase.`,
			});
		}

		if (!subs.some(({upperLimitHertz}) => upperLimitHertz !== undefined)) {
			remarks.push({
				kind: 'note',
				code: 'sub-upper-limit-unknown',
				text: 'Subs: no upper limit given; taken to reach above every crossover.',
			});
		}
	}

	for (const [name, shape, usual] of [
		['high-pass', crossover?.highPass, usualHighPass],
		['low-pass', crossover?.lowPass, usualLowPass],
	] as const) {
		if (isOddLinkwitzRiley(shape)) {
			remarks.push({
				kind: 'problem',
				code: 'filter-does-not-exist',
				text: `Receiver's ${name}: a Linkwitz-Riley filter of order ${shape!.order} does not exist. ${usual.kind === 'butterworth' ? 'Butterworth' : 'Linkwitz-Riley'} of order ${usual.order} was taken; correct it under Kit.`,
			});
		} else if (profile.receiver && !shape) {
			remarks.push({
				kind: 'note',
				code: `${name}-assumed`,
				text: `Receiver's ${name}: not stated, ${usual.kind === 'butterworth' ? 'Butterworth' : 'Linkwitz-Riley'} of order ${usual.order} taken (common practice, no source).`,
			});
		}
	}

	for (const [id, {hertz, limitHertz, ranking, limitAssumed}] of channels) {
		const chosen = ranking.find(choice => choice.hertz === hertz);
		if (!chosen?.belowLimit || limitAssumed) continue;
		remarks.push({
			kind: 'problem',
			code: 'crossover-below-limit',
			about: id,
			text: `${id}: limit ${limitHertz.toFixed(0)} Hz, above every crossover that can be set; ${chosen.hertz} Hz is the nearest. Bass between them is missing.`,
		});
	}

	if (lfeLowPassHertz !== undefined && lfeLowPassHertz < lfeTopHertz) {
		remarks.push({
			kind: 'doubt',
			code: 'lfe-low-pass-low',
			text: `LFE low-pass: ${lfeLowPassHertz} Hz is the highest choice; content up to ${lfeTopHertz} Hz is cut.`,
		});
	}

	return remarks;
}
