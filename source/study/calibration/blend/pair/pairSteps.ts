import {subsOf} from '../../../../profile/ask/subs.ts';
import {usualSubBand} from '../../../../profile/practice.ts';
import type {Profile} from '../../../../profile/types.ts';
import {planSetting} from '../actions.ts';
import type {Collected} from '../collected.ts';
import {balanceText} from '../noise.ts';
import {isSameOffset, type SubsOffset} from '../offset.ts';
import {noiseOf, stepMaker} from '../planned.ts';
import type {Added, BlendStep} from '../steps.ts';
import {stateWithChange} from '../subsState.ts';
import {tonesNear} from '../tonesOf.ts';
import {readingsEach} from '../verdict.ts';
import {pairToneHertz} from './pairTones.ts';
import {pairNoises} from './pairTrial.ts';

/** Delay of one line for the second reading of a tone, twice that for the third, ms: 64 to 127 degrees of the tones. */
const apartMs = 5.6;

const feedsOf = (profile: Profile) => [...new Set(subsOf(profile).map(({fedBy}) => fedBy as string))];

/** How the lines stand with a change on top of the set that stands. */
export function standingWith({state, lines}: Pick<Collected, 'state' | 'lines'>, added: Added) {
	return stateWithChange(state, lines, {
		addedMs: added.delayMs,
		delayed: added.delayMs === 0 ? [] : (added.subs ?? []),
		turned: added.isTurned ? (added.subs ?? []) : [],
	});
}

/** A reading's delay may miss the wanted one by so much, ms: 23 degrees of the highest tone. */
const mostMissMs = 1;

/** As it stands and two delays of one line against the other, as the boxes make them; the first line moves where the second cannot. */
function toneChanges(profile: Profile, {set, lines}: Pick<Collected, 'set' | 'lines'>): Added[] {
	const [first, second] = lines.map(({subs}) => subs);
	const later = (subs: readonly string[], wantedMs: number): Added[] => {
		const addedMs = planSetting(profile, set, subs, wantedMs, false)?.addedMs ?? 0;
		const isMade = Math.abs(addedMs - wantedMs) <= mostMissMs;
		return isMade ? [{delayMs: Number(addedMs.toFixed(4)), isTurned: false, subs}] : [];
	};
	const made = [
		...later(second!, apartMs),
		...later(second!, 2 * apartMs),
		...later(first!, apartMs),
		...later(first!, 2 * apartMs),
	].slice(0, 2);
	const standing = {delayMs: 0, isTurned: false, subs: second!};
	// A box of a short range makes two delays only; what stands, turned, is the third reading.
	return [standing, ...made, ...(made.length < 2 ? [{...standing, isTurned: true}] : [])];
}

/** Tones of both lines together at three delays between them. A tone that is told already asks nothing. */
export function pairToneSteps(
	profile: Profile,
	collected: Collected,
	isTold: (hertz: number) => boolean,
): BlendStep[] {
	const {pair, tolerances} = collected;
	const make = stepMaker(profile, collected);
	const offsets = toneChanges(profile, collected);
	const tones = tonesNear(
		pairToneHertz,
		[...pair.tones].flatMap(([hertz, readings]) => readings.map(() => hertz)),
	);
	return offsets.flatMap(added => {
		const {apartMs: wantedMs, isTurned} = standingWith(collected, added).relation[1]!;
		return tones.map(hertz => {
			const isRead = pair.tones
				.get(hertz)
				?.some(
					reading =>
						reading.inverted === isTurned && Math.abs(reading.laterMs - wantedMs) <= tolerances.apartMs,
				);
			return make({
				part: 'pair',
				mains: [],
				playInto: feedsOf(profile),
				signal: {kind: 'tone', hertz},
				added,
				nth: 1,
				isTaken: isRead || isTold(hertz),
			});
		});
	});
}

/** Noise as it stands and with the change: through the LFE channel, then the centre alone and all fronts, each twice. */
export function pairTrialSteps(
	profile: Profile,
	collected: Collected,
	from: SubsOffset,
	to: SubsOffset,
	added: Added,
): BlendStep[] {
	const {fronts, centre, pairNoise, state, tolerances} = collected;
	const make = stepMaker(profile, collected);
	const ids = fronts.map(({id}) => id);
	return (['pair before', 'pair after'] as const).flatMap(part =>
		pairNoises(fronts.length).flatMap(what => {
			const mains = what === 'lfe' ? [] : what === 'centre' ? [centre!] : ids;
			const count = pairNoise.filter(
				reading =>
					reading.what === what &&
					!reading.isSearch &&
					reading.balance === balanceText(state, what) &&
					(part === 'pair before'
						? !reading.base && isSameOffset(reading.offset, from, tolerances)
						: reading.base !== undefined &&
							isSameOffset(reading.base, from, tolerances) &&
							isSameOffset(reading.offset, to, tolerances)),
			).length;
			return Array.from({length: readingsEach}, (_, index) =>
				make({
					part,
					mains,
					playInto: what === 'lfe' ? feedsOf(profile) : mains,
					signal: what === 'lfe' ? {...usualSubBand} : noiseOf(collected),
					added: part === 'pair before' ? {...added, delayMs: 0, isTurned: false} : added,
					nth: index + 1,
					isTaken: count > index,
				}),
			);
		}),
	);
}
