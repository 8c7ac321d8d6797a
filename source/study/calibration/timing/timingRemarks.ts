import type {TimingControl} from '../../../profile/ask/boxes.ts';
import {subsByFeed} from '../../../profile/ask/subs.ts';
import {listed, nameOf} from '../../../profile/names.ts';
import {leastApartMs} from '../../../profile/practice.ts';
import type {Profile} from '../../../profile/types.ts';
import {median} from '../../../science/numeric/statistics.ts';
import type {Remark} from '../result.ts';
import type {Shared} from '../steps.ts';
import {inLength, inMs, remark} from '../words.ts';
import type {Arrival} from './delays.ts';

/** What limits and steps cost in timing, and what would make it better. */
export function timingRemarks(
	profile: Profile,
	arrivals: ReadonlyMap<string, Arrival>,
	shared: Shared,
	box: TimingControl,
): Remark[] {
	return [...rangeRemarks(profile, arrivals, shared, box), ...sharedOutputRemarks(profile, arrivals)];
}

function rangeRemarks(
	profile: Profile,
	arrivals: ReadonlyMap<string, Arrival>,
	{rounding, errors}: Shared,
	box: TimingControl,
): Remark[] {
	if (rounding.fits) return [];
	const values = [...arrivals.values()].map(({value}) => value);
	const spreadMs = Math.max(...values) - Math.min(...values);
	const rangeMs = box.delay.maximum - box.delay.minimum;
	const middle = median([...errors.values()]);
	const off = [...errors].filter(([, error]) => Math.abs(error - middle) > box.delay.step);
	const outliers = off.length > 0 ? off : [...errors];
	const parts = outliers
		.toSorted(([, a], [, b]) => Math.abs(b - middle) - Math.abs(a - middle))
		.slice(0, 4)
		.map(
			([id, error]) =>
				`${nameOf(profile, id)} ${inMs(Math.abs(error - middle))} ${error > middle ? 'late' : 'early'}`,
		);
	const text =
		`The arrivals differ by ${inMs(spreadMs)}; the receiver evens out ${inMs(rangeMs)}. ` +
		`Lost: ${inMs(rounding.worstPairwiseError)}. With these settings ${listed(parts)} against most others. ${remedy(profile, arrivals, rounding.worstPairwiseError)}`;
	return [
		remark(
			'problem',
			'timing-spread-does-not-fit',
			text,
			outliers.length === 1 ? outliers[0]![0] : undefined,
		),
	];
}

/** What would fix it: the largest latency where one is to blame, else moving the farthest or the nearest speaker. */
function remedy(profile: Profile, arrivals: ReadonlyMap<string, Arrival>, lostMs: number): string {
	const sorted = [...arrivals.values()].toSorted((a, b) => a.value - b.value);
	const last = sorted.at(-1)!;
	const first = sorted[0]!;
	const latency = last.latencies.toSorted((a, b) => b.milliseconds - a.milliseconds)[0];
	if (latency && latency.milliseconds >= lostMs / 2) {
		return `To fix it: lower the ${inMs(latency.milliseconds)} of latency at ${latency.at} by ${inMs(lostMs)}, or connect ${nameOf(profile, last.id)} without it.`;
	}

	const metresPerMs = last.distance.metres / Math.max(1e-9, last.value - latencySum(last));
	const unit = profile.lengthUnit;
	return `To fix it: bring ${nameOf(profile, last.id)} ${inLength(lostMs * metresPerMs, unit)} nearer, or set ${nameOf(profile, first.id)} that much farther away.`;
}

function latencySum({latencies}: Arrival): number {
	return latencies.reduce((sum, {milliseconds}) => sum + milliseconds, 0);
}

function sharedOutputRemarks(profile: Profile, arrivals: ReadonlyMap<string, Arrival>): Remark[] {
	const remarks: Remark[] = [];
	for (const [feed, byOutput] of subsByFeed(profile)) {
		for (const [output, subs] of byOutput) {
			const values = subs.flatMap(id => arrivals.get(id)?.value ?? []);
			const apartMs = values.length < 2 ? 0 : Math.max(...values) - Math.min(...values);
			if (apartMs < leastApartMs) continue;
			const where = output || feed;
			const text = `${listed(subs.map(id => nameOf(profile, id)))} hang on one output (${where}) and arrive ${inMs(apartMs)} apart. Nothing can be set to change that; the middle is used. To fix it: give each its own output.`;
			remarks.push(remark('doubt', 'subs-share-output', text, where));
		}
	}

	return remarks;
}
