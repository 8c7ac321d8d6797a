import {effectOf, lineOf, mainChannels} from '../../../profile/ask/lines.ts';
import {settingsInForce} from '../../../profile/ask/settings.ts';
import {subsOf} from '../../../profile/ask/subs.ts';
import type {Profile} from '../../../profile/types.ts';
import {blendVerdict} from '../../hearing/blendVerdict.ts';
import type {BlendWish} from './blendResult.ts';
import {plainlyTurned} from './plainPolarities.ts';

const fronts = new Set(['FL', 'FR', 'FC']);
/** Less than this is what steps leave, ms. */
const leastMs = 0.15;

/**
The blend that the newest recorded round asks for, as delay and polarity of the subs on top of what distances give.

@param arrivalsMs - By speaker and sub, from distance and stated latency.
@returns `undefined` where nothing was recorded, where the settings in force meanwhile are not known, where one more playing
has found it no better, or where it asks for what distances give anyway.
*/
export function recordedWish(
	profile: Profile,
	arrivalsMs: ReadonlyMap<string, number>,
): BlendWish | undefined {
	const found = profile.recordings?.findLast(({blend, setAside}) => blend && !setAside);
	if (!found?.blend) return undefined;
	const verdict = blendVerdict(profile, found);
	if (verdict && !verdict.isKept) return undefined;
	const set = settingsInForce(profile, found);
	const stood = (id: string): number | undefined => {
		const arrival = arrivalsMs.get(id);
		const {delayMs} = effectOf(profile, set, lineOf(profile, id));
		return arrival === undefined || delayMs === 'unstated' ? undefined : arrival + delayMs;
	};
	const frontTimes = mainChannels(profile).flatMap(({id}) => (fronts.has(id) ? (stood(id) ?? []) : []));
	if (!set || frontTimes.length === 0) return undefined;
	const front = frontTimes.reduce((sum, time) => sum + time, 0) / frontTimes.length;
	const subs = new Map<string, {laterMs: number; isInverted: boolean}>();
	for (const {id} of subsOf(profile)) {
		const group = found.blend.groups.find(each => each.subs.includes(id));
		const time = stood(id);
		if (time === undefined) return undefined;
		subs.set(id, {
			laterMs: time - front + (group?.addedMs ?? 0),
			isInverted: effectOf(profile, set, lineOf(profile, id)).isInverted !== (group?.isTurned ?? false),
		});
	}

	const all = [...subs.values()];
	const isPlainlyTurned = plainlyTurned(profile);
	const isPlain = [...subs].every(
		([id, {laterMs, isInverted}]) =>
			Math.abs(laterMs) < leastMs && isInverted === isPlainlyTurned(lineOf(profile, id)),
	);
	if (isPlain) return undefined;
	return {
		offsetMs: all.reduce((sum, {laterMs}) => sum + laterMs, 0) / all.length,
		inverted: all[0]!.isInverted,
		subs,
		recorded: {gainDb: verdict?.gainDb ?? found.blend.gainDb, isVerified: verdict !== undefined},
	};
}
