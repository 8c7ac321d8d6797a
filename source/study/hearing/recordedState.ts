import {settingFor, settingsInForce, standingSettings} from '../../profile/ask/settings.ts';
import type {Profile, Recording} from '../../profile/types.ts';
import {type BlendVerdict, blendVerdict} from './blendVerdict.ts';
import {subGroups} from './visit.ts';

/** What stood in a box while the blend was recorded: an entry to go back to. */
export type OldEntry = {
	readonly box: 'processor' | 'receiver' | 'sub';
	/** Channel of the receiver, or output of the processor. */
	readonly about: string;
	readonly what: 'delay' | 'distance' | 'polarity';
	/** ms or metres; absent where nobody said, and for a polarity. */
	readonly from?: number;
};

/**
How far a blend by recording is.

- `none`: nothing was recorded that counts.
- `together`: recorded, but speakers and subs were not told apart.
- `stands`: told apart, and nothing is worth changing.
- `to enter`: found, and the settings decided since do not hold it yet.
- `to verify`: dialled in; one more playing says whether it is better.
- `kept`, `put back`: verified.
*/
export type RecordedState =
	| {readonly kind: 'none'}
	| {readonly kind: 'together' | 'stands'; readonly recording: Recording}
	| {readonly kind: 'to enter' | 'to verify'; readonly recording: Recording; readonly gainDb: number}
	| {
			readonly kind: 'kept' | 'put back';
			readonly recording: Recording;
			readonly verdict: BlendVerdict;
			/** To go back to, where it was put back and the boxes still hold the other. */
			readonly old: readonly OldEntry[];
	  };

/** How far the profile's blend by recording is. */
export function recordedState(profile: Profile): RecordedState {
	const counted = (profile.recordings ?? []).filter(({setAside}) => !setAside);
	const found = counted.findLast(({blend}) => blend);
	if (!found?.blend) {
		const last = counted.at(-1);
		return last ? {kind: 'together', recording: last} : {kind: 'none'};
	}

	const {groups, gainDb} = found.blend;
	if (groups.every(({addedMs, isTurned}) => addedMs === 0 && !isTurned))
		return {kind: 'stands', recording: found};
	const verdict = blendVerdict(profile, found);
	const isStill = standingSettings(profile)?.id === found.inForce;
	if (!verdict) return {kind: isStill ? 'to enter' : 'to verify', recording: found, gainDb};
	if (verdict.isKept) return {kind: 'kept', recording: found, verdict, old: []};
	return {kind: 'put back', recording: found, verdict, old: isStill ? [] : oldEntries(profile, found)};
}

/** What the boxes of the changed groups showed while the blend was recorded. */
function oldEntries(profile: Profile, found: Recording): OldEntry[] {
	const set = settingsInForce(profile, found);
	return subGroups(profile).flatMap(({subs, box, at}): OldEntry[] => {
		const change = found.blend?.groups.find(group => group.subs.join('+') === subs.join('+'));
		if (!change) return [];
		const {delayMs, distanceMetres} =
			box === 'processor'
				? {delayMs: set?.outputs?.[at]?.delayMs ?? {stepped: 0}, distanceMetres: undefined}
				: (settingFor(set, at) ?? {});
		const from = (delayMs ?? distanceMetres)?.stepped;
		const where = {box: box === 'processor' ? box : ('receiver' as const), about: at};
		return [
			...(change.addedMs === 0
				? []
				: [
						{
							...where,
							what: delayMs || !distanceMetres ? ('delay' as const) : ('distance' as const),
							...(from !== undefined && {from}),
						},
					]),
			...(change.isTurned ? [{box, about: box === 'sub' ? subs[0]! : at, what: 'polarity' as const}] : []),
		];
	});
}
