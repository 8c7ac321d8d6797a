import type {TimingControl} from '../../../profile/ask/boxes.ts';
import {subsByFeed} from '../../../profile/ask/subs.ts';
import {finding} from '../../../profile/finding.ts';
import {leastApartMs} from '../../../profile/practice.ts';
import type {Profile} from '../../../profile/types.ts';
import {median} from '../../../science/numeric/statistics.ts';
import type {Shared} from '../steps.ts';
import type {TimingFacts, TimingFinding} from './facts.ts';
import type {Arrival} from './result.ts';

/** What limits and steps cost in timing, and what would make it better. */
export function timingRemarks(
	profile: Profile,
	arrivals: ReadonlyMap<string, Arrival>,
	shared: Shared,
	box: TimingControl,
): TimingFinding[] {
	return [...rangeRemarks(arrivals, shared, box), ...sharedOutputRemarks(profile, arrivals)];
}

function rangeRemarks(
	arrivals: ReadonlyMap<string, Arrival>,
	{rounding, errors}: Shared,
	box: TimingControl,
): TimingFinding[] {
	if (rounding.fits) return [];
	const values = [...arrivals.values()].map(({value}) => value);
	const middle = median([...errors.values()]);
	const off = [...errors].filter(([, error]) => Math.abs(error - middle) > box.delay.step);
	const outliers = off.length > 0 ? off : [...errors];
	const facts = {
		spreadMs: Math.max(...values) - Math.min(...values),
		rangeMs: box.delay.maximum - box.delay.minimum,
		lostMs: rounding.worstPairwiseError,
		outliers: outliers
			.map(([id, error]) => ({id, lateMs: error - middle}))
			.sort((a, b) => Math.abs(b.lateMs) - Math.abs(a.lateMs))
			.slice(0, 4),
		remedy: remedy(arrivals, rounding.worstPairwiseError),
	};
	const about = outliers.length === 1 ? [outliers[0]![0]] : [];
	return [finding('problem', 'timing-spread-does-not-fit', about, facts)];
}

/** What would fix it: the largest latency where one is to blame, else moving the farthest or the nearest speaker. */
function remedy(
	arrivals: ReadonlyMap<string, Arrival>,
	lostMs: number,
): TimingFacts['timing-spread-does-not-fit']['remedy'] {
	const sorted = [...arrivals.values()].toSorted((a, b) => a.value - b.value);
	const last = sorted.at(-1)!;
	const latency = last.latencies.toSorted((a, b) => b.milliseconds - a.milliseconds)[0];
	if (latency && latency.milliseconds >= lostMs / 2) return {kind: 'latency', id: last.id, ...latency};
	const metresPerMs = last.distance.metres / Math.max(1e-9, last.value - latencySum(last));
	return {kind: 'move', nearer: last.id, farther: sorted[0]!.id, metres: lostMs * metresPerMs};
}

function latencySum({latencies}: Arrival): number {
	return latencies.reduce((sum, {milliseconds}) => sum + milliseconds, 0);
}

function sharedOutputRemarks(profile: Profile, arrivals: ReadonlyMap<string, Arrival>): TimingFinding[] {
	const remarks: TimingFinding[] = [];
	for (const [feed, byOutput] of subsByFeed(profile)) {
		for (const [output, subs] of byOutput) {
			const values = subs.flatMap(id => arrivals.get(id)?.value ?? []);
			const apartMs = values.length < 2 ? 0 : Math.max(...values) - Math.min(...values);
			if (apartMs < leastApartMs) continue;
			remarks.push(finding('doubt', 'subs-share-output', [output || feed], {subs, apartMs}));
		}
	}

	return remarks;
}
