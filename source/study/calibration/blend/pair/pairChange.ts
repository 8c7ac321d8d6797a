import type {Profile} from '../../../../profile/types.ts';
import {planSetting, reachOf} from '../actions.ts';
import {bestOffset, gainSigmaDb, meanLevelDb, type Offset} from '../bestState.ts';
import type {Collected} from '../collected.ts';
import type {SubsOffset} from '../offset.ts';
import type {Added} from '../steps.ts';
import type {Estimate, ToneSum} from '../toneSum.ts';

/**
A change is sought so far from what stands, ms: beyond, the rest of the bass and the fronts pay for it. From simulated
rooms.
*/
const farthestMs = 10;

/** A change of one line of subs on top of the set that stands, and what the tones expect of it. */
export type PairChange = {readonly added: Added; readonly gainDb: Estimate};

/** How the second line stands to the first. */
export function apartOf({relation}: Pick<SubsOffset, 'relation'>): Offset {
	const {apartMs, isTurned} = relation[1]!;
	return {laterMs: apartMs, inverted: isTurned};
}

const asSums = (sums: readonly ToneSum[]) => new Map([['LFE', sums]]);

/** What tones of both lines say of one way that they stand to each other against another, dB. */
export function pairGain(sums: readonly ToneSum[], from: Offset, to: Offset): Estimate {
	const own = asSums(sums);
	return {value: meanLevelDb(own, to) - meanLevelDb(own, from), sigma: gainSigmaDb(own, from, to)};
}

/** The change with the loudest mean over the tones, as the boxes make it: the second line moves, or the first the other way. */
export function bestPairChange(
	profile: Profile,
	{set, lines, stands}: Pick<Collected, 'set' | 'lines' | 'stands'>,
	sums: readonly ToneSum[],
): PairChange {
	const [first, second] = lines.map(({subs}) => ({subs, reach: reachOf(profile, set, subs)}));
	const now = apartOf(stands);
	const isIn = ({lowMs, highMs, stepMs}: ReturnType<typeof reachOf>, ms: number) =>
		stepMs > 0 && ms >= lowMs - stepMs / 2 && ms <= highMs + stepMs / 2;
	const best = bestOffset(
		asSums(sums),
		now,
		farthestMs,
		Math.max(first!.reach.stepMs, second!.reach.stepMs),
		laterMs => isIn(second!.reach, laterMs - now.laterMs) || isIn(first!.reach, now.laterMs - laterMs),
	);
	const laterMs = best.laterMs - now.laterMs;
	const isSecond = isIn(second!.reach, laterMs);
	const {subs} = isSecond ? second! : first!;
	const isTurned = best.inverted !== now.inverted;
	const made = planSetting(profile, set, subs, isSecond ? laterMs : -laterMs, isTurned);
	const added = {delayMs: Number((made?.addedMs ?? 0).toFixed(4)), isTurned, subs};
	const to = {laterMs: now.laterMs + (isSecond ? added.delayMs : -added.delayMs), inverted: best.inverted};
	return {added, gainDb: pairGain(sums, now, to)};
}

/** Whether a box can delay one line against the other. */
export function canMoveApart(profile: Profile, {set, lines}: Pick<Collected, 'set' | 'lines'>): boolean {
	return lines.length === 2 && lines.some(({subs}) => reachOf(profile, set, subs).stepMs > 0);
}
