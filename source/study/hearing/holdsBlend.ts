import {effectOf, lineOf, mainChannels, orElse} from '../../profile/ask/lines.ts';
import {settingsInForce} from '../../profile/ask/settings.ts';
import type {Profile, Recording} from '../../profile/types.ts';

const fronts = new Set(['FL', 'FR', 'FC']);

/**
Whether the settings of a later recording hold the blend that an earlier one asked for: delay and polarity of every group
against the fronts lie nearer to what was asked than to what stood. Where nobody says what stood, any other settings do.
*/
export function holdsBlend(profile: Profile, found: Recording, later: Recording): boolean {
	if (JSON.stringify(later.inForce) === JSON.stringify(found.inForce)) return false;
	const [before, after] = [found, later].map(each => settingsInForce(profile, each));
	if (!before || !after) return true;
	const changed = (id: string) => {
		const line = lineOf(profile, id);
		const [then, now] = [before, after].map(set => effectOf(profile, set, line));
		return {
			ms: orElse(now!.delayMs, 0) - orElse(then!.delayMs, 0),
			isTurned: now!.isInverted !== then!.isInverted,
		};
	};
	const mains = mainChannels(profile).filter(({id}) => fronts.has(id));
	const common = mains.reduce((sum, {id}) => sum + changed(id).ms, 0) / Math.max(1, mains.length);
	return (found.blend?.groups ?? []).every(({subs, addedMs, isTurned}) =>
		subs.every(id => {
			const own = changed(id);
			const ms = own.ms - common;
			// A switch on the sub itself is nobody's setting: only what boxes say can contradict.
			const isTurnedAlike = own.isTurned === isTurned || isTurnedAtSub(profile, id);
			return isTurnedAlike && (addedMs === 0 || Math.abs(ms - addedMs) <= Math.abs(ms));
		}),
	);
}

/** Whether no box turns this sub, so that a set of settings does not say how it pushes. */
export function isTurnedAtSub(profile: Profile, id: string): boolean {
	const {output} = lineOf(profile, id);
	const isByOutput = output !== undefined && profile.bassProcessor?.invertsOutputs === true;
	return !isByOutput && profile.receiver?.invertsSubs !== true;
}
