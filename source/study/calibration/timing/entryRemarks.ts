import type {TimingControl} from '../../../profile/ask/boxes.ts';
import {finding} from '../../../profile/finding.ts';
import {strikingEntryMetres} from '../../../profile/practice.ts';
import {median} from '../../../science/numeric/statistics.ts';
import type {Dialled} from '../result.ts';
import type {TimingFinding} from './facts.ts';
import type {Arrival} from './result.ts';

/**
Distances to enter that are none of the tape's, on purpose: shifted together, or with a latency in them.

@param entries - By channel, m.
@param members - Subs that a channel feeds; a channel that is not in it is its own speaker.
*/
export function entryRemarks(
	entries: ReadonlyMap<string, Pick<Dialled, 'exact' | 'stepped'>>,
	members: ReadonlyMap<string, readonly string[]>,
	arrivals: ReadonlyMap<string, Arrival>,
	box: TimingControl,
): TimingFinding[] {
	if (box.kind !== 'distance') return [];
	const late = [...entries.keys()].flatMap(id =>
		latencyRemark(
			id,
			(members.get(id) ?? [id]).flatMap(member => arrivals.get(member) ?? []),
			box,
		),
	);
	return [...shiftRemark([...entries.values()], box), ...late];
}

/** A common shift is told where it is large enough to make an entry look like a slip. */
function shiftRemark(
	entries: ReadonlyArray<Pick<Dialled, 'exact' | 'stepped'>>,
	{delay, entryPerMs}: TimingControl,
): TimingFinding[] {
	const metres = median(entries.map(({exact, stepped}) => stepped - exact));
	const isSeen = Math.abs(metres) >= (delay.step * entryPerMs) / 4;
	const kind = Math.abs(metres) >= strikingEntryMetres ? 'advice' : 'note';
	return isSeen ? [finding(kind, 'distances-shifted-together', [], {metres})] : [];
}

/** Of several subs on a channel the least late: the rest is made up for behind it. */
function latencyRemark(
	id: string,
	arrivals: readonly Arrival[],
	{entryPerMs}: TimingControl,
): TimingFinding[] {
	const sums = arrivals.map(({latencies}) => latencies.reduce((sum, one) => sum + one.milliseconds, 0));
	const least = Math.min(...sums);
	const metres = least * entryPerMs;
	if (arrivals.length === 0 || metres < strikingEntryMetres) return [];
	const {latencies} = arrivals[sums.indexOf(least)]!;
	return [finding('advice', 'entry-holds-latency', [id], {metres, latencies})];
}
