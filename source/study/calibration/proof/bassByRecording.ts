import {isLfe} from '../../../profile/channels.ts';
import {proofLimits, recordedLevelSigmaDb} from '../../../profile/practice.ts';
import type {Profile, Recording} from '../../../profile/types.ts';
import {predictedBass} from '../../hearing/predictedBass.ts';
import {limitOf} from './limits.ts';
import type {ProofPlanItem, SettledRow} from './planItem.ts';
import {isSub} from './rounds.ts';

/**
Bass rows that a recording with the settings in force closes: subs by themselves and together, and tones of a front with the subs,
where the bass of every recorded front is what the parts recorded before the change predict. One front that is off leaves all of
them open, for it may be any of the subs.

@returns By the row's key.
*/
export function bassByRecording(
	profile: Profile,
	recording: Recording,
	items: readonly ProofPlanItem[],
): ReadonlyMap<string, SettledRow> {
	const settled = new Map<string, SettledRow>();
	const fronts = predictedBass(profile, recording);
	const mostDb = (profile.kit?.meterPlaceMarked ? proofLimits.marked : proofLimits.unmarked).toneDb;
	// What is no number proves nothing.
	if (fronts.length === 0 || !fronts.every(({worstDb}) => worstDb <= mostDb)) return settled;
	const known = new Set(fronts.flatMap(({subs}) => subs));
	const bandOffDb = fronts.reduce((sum, front) => sum + front.bandOffDb, 0) / fronts.length;
	const sigmaDb = recordedLevelSigmaDb * Math.SQRT2;
	const date = recording.takenAt?.slice(0, 10);
	for (const item of items) {
		if (item.seat !== recording.seat) continue;
		const subs = item.source.filter(id => isSub(profile, id) || isLfe(id));
		if (subs.length === 0 || !subs.every(id => known.has(id))) continue;
		const others = item.source.filter(id => !subs.includes(id));
		const front = fronts.find(({channel}) => others.length === 1 && channel === others[0]);
		const residualDb =
			others.length === 0 && item.signal.kind === 'pink'
				? bandOffDb
				: front && item.signal.kind === 'tone'
					? front.offDbAt(item.signal.hertz)
					: undefined;
		if (residualDb === undefined || !(Math.abs(residualDb) <= limitOf(profile, item.signal, sigmaDb)))
			continue;
		settled.set(item.key, {residualDb, ...(date !== undefined && {date})});
	}

	return settled;
}
