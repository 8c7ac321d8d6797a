import {lineOf, mainChannels} from '../../profile/ask/lines.ts';
import {settingFor, settingsInForce, standingSettings} from '../../profile/ask/settings.ts';
import {subsOf} from '../../profile/ask/subs.ts';
import type {Profile, Recording} from '../../profile/types.ts';
import {type BlendVerdict, blendVerdict} from './blendVerdict.ts';
import {isTurnedAtSub} from './holdsBlend.ts';
import {predictedBass} from './predictedBass.ts';

/** What stood in a box while the blend was recorded: an entry to go back to. */
export type OldEntry = {
	readonly box: 'processor' | 'receiver' | 'sub';
	/** Channel of the receiver, or output of the processor. */
	readonly about: string;
	readonly what: 'delay' | 'distance' | 'polarity';
	/** ms or metres; absent where nobody said, and for a polarity. */
	readonly from?: number;
};

/** A microphone that was put down anew moves a sixth of an octave by less, dB; a forgotten delay or polarity by more. Judgement, no source. */
const notAsEnteredDb = 5;

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
			/** Where it sounds otherwise than the entries should make it: by how much at most, dB. */
			readonly notAsEnteredDb?: number;
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
	const off = Math.max(0, ...predictedBass(profile, verdict.by).map(({worstDb}) => worstDb));
	return {
		kind: 'put back',
		recording: found,
		verdict,
		old: isStill ? [] : oldEntries(profile, found),
		...(off > notAsEnteredDb && {notAsEnteredDb: off}),
	};
}

/**
What the boxes showed while the blend was recorded and do not show any more: the lines of the subs, or those of the speakers
where these were moved instead; and the polarity switch of a sub that no box turns.
*/
function oldEntries(profile: Profile, found: Recording): OldEntry[] {
	const [before, now] = [settingsInForce(profile, found), standingSettings(profile)];
	const subs = subsOf(profile);
	const feeds = [...new Set(subs.map(({fedBy}) => fedBy as string))];
	const outputs = [...new Set(subs.flatMap(({id}) => lineOf(profile, id).output ?? []))];
	const mains = mainChannels(profile).map(({id}) => id as string);
	const ofChannel = (about: string): OldEntry[] => {
		const [then, after] = [settingFor(before, about), settingFor(now, about)];
		const what = then?.distanceMetres ? 'distance' : 'delay';
		const [from, to] = [then, after].map(each => (each?.distanceMetres ?? each?.delayMs)?.stepped);
		return changed('receiver', about, what, from, to, then?.polarityInverted, after?.polarityInverted);
	};
	const ofOutput = (about: string): OldEntry[] => {
		const [then, after] = [before?.outputs?.[about], now?.outputs?.[about]];
		const [from, to] = [then, after].map(each => each?.delayMs?.stepped ?? 0);
		return changed('processor', about, 'delay', from, to, then?.polarityInverted, after?.polarityInverted);
	};
	const ofSubs = [...outputs.flatMap(ofOutput), ...feeds.flatMap(ofChannel)];
	const isMoved = ofSubs.some(({what}) => what !== 'polarity');
	const turnedSubs = (found.blend?.groups ?? []).flatMap(group =>
		group.isTurned ? group.subs.filter(id => isTurnedAtSub(profile, id)) : [],
	);
	return [
		...ofSubs,
		...(isMoved ? [] : mains.flatMap(ofChannel)),
		...turnedSubs.map((about): OldEntry => ({box: 'sub', about, what: 'polarity'})),
	];
}

function changed(
	box: OldEntry['box'],
	about: string,
	what: 'delay' | 'distance',
	from: number | undefined,
	to: number | undefined,
	...[wasTurned = false, isTurned = false]: ReadonlyArray<boolean | undefined>
): OldEntry[] {
	return [
		...(from === undefined || from === to ? [] : [{box, about, what, from}]),
		...(wasTurned === isTurned ? [] : [{box, about, what: 'polarity' as const}]),
	];
}
