import {subsOf} from '../../../profile/ask/subs.ts';
import {finding} from '../../../profile/finding.ts';
import type {Profile} from '../../../profile/types.ts';
import type {BlendWish} from './blendResult.ts';
import type {BlendFinding} from './facts.ts';
import {soundings} from './groups.ts';

/** What the settings owe to the blend, or why they owe it nothing. */
export function blendRemarks(
	profile: Profile,
	wish: BlendWish | undefined,
	atSubs: readonly string[],
): BlendFinding[] {
	if (!wish) return hasTones(profile) ? [finding('note', 'tones-not-used', [])] : [];
	const {pair} = wish;
	return [
		...(pair ? [pairFinding(pair)] : []),
		...(pair?.isAlone
			? []
			: [
					wishFinding(
						wish,
						subsOf(profile).map(({id}) => id),
					),
				]),
		...atSubs.map(id => finding('advice', 'polarity-at-sub', [id])),
	];
}

function wishFinding(
	{recorded, offsetMs, inverted, frontsGainDb, centreGainDb}: BlendWish,
	subs: readonly string[],
): BlendFinding {
	return recorded
		? finding(recorded.isVerified ? 'note' : 'advice', 'blended-by-recording', subs, recorded)
		: finding('note', 'blended', subs, {
				laterMs: offsetMs,
				isTurned: inverted,
				...(frontsGainDb !== undefined && {frontsGainDb}),
				...(centreGainDb !== undefined && {centreGainDb}),
			});
}

function pairFinding({subs, laterMs, isTurned, lfeGainDb}: NonNullable<BlendWish['pair']>): BlendFinding {
	return finding('note', 'pair-changed', subs, {laterMs, isTurned, lfeGainDb});
}

/** Whether tones were read through a crossover in the first round. */
function hasTones(profile: Profile): boolean {
	const sounding = soundings(profile);
	return (
		profile.meter?.some(({signal, setAside, source, round}) => {
			if (signal?.kind !== 'tone' || setAside || round !== 'first') return false;
			const heard = sounding(source);
			return heard !== undefined && heard.mains.length > 0 && heard.subs.length > 0;
		}) ?? false
	);
}
