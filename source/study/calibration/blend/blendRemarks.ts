import {subsOf} from '../../../profile/ask/subs.ts';
import {listed, nameOf} from '../../../profile/names.ts';
import type {Profile} from '../../../profile/types.ts';
import type {Remark} from '../result.ts';
import {inMs, inSignedDb, remark} from '../words.ts';
import type {BlendWish} from './blendResult.ts';
import {soundings} from './groups.ts';

/** What the settings owe to the blend, or why they owe it nothing. */
export function blendRemarks(
	profile: Profile,
	wish: BlendWish | undefined,
	atSubs: readonly string[],
): Remark[] {
	if (wish) {
		const subs = listed(subsOf(profile).map(({id}) => nameOf(profile, id)));
		const gains = [wish.frontsGainDb, wish.centreGainDb].filter(gain => gain !== undefined);
		const gained = gains.length === 0 ? '' : ` (${gains.map(gain => inSignedDb(gain)).join(' and ')})`;
		const {recorded} = wish;
		if (recorded)
			return [
				remark(
					recorded.isVerified ? 'note' : 'advice',
					'blended-by-recording',
					`${subs}: as the recordings have it, ${inSignedDb(recorded.gainDb)} through the crossover ${recorded.isVerified ? 'heard' : 'expected; play and record once more when it is entered'}.`,
				),
				...switchAdvice(profile, atSubs),
			];
		return [
			remark(
				'note',
				'blended',
				`${subs}: ${inMs(wish.offsetMs)} on top of what distances give${wish.inverted ? ', turned' : ''}, as verified with noise${gained}.`,
			),
			...switchAdvice(profile, atSubs),
		];
	}

	const sounding = soundings(profile);
	const isRead = profile.meter?.some(({signal, setAside, source, round}) => {
		if (signal?.kind !== 'tone' || setAside || round !== 'first') return false;
		const heard = sounding(source);
		return heard && heard.mains.length > 0 && heard.subs.length > 0;
	});
	return isRead
		? [
				remark(
					'note',
					'tones-not-used',
					'Tones were read through the crossover, but no setting of the subs was verified as louder: their delay and polarity are what distances give.',
				),
			]
		: [];
}

function switchAdvice(profile: Profile, atSubs: readonly string[]): Remark[] {
	return atSubs.map(id =>
		remark(
			'advice',
			'polarity-at-sub',
			`${nameOf(profile, id)}: turn its polarity switch; neither receiver nor processor does it.`,
			id,
		),
	);
}
