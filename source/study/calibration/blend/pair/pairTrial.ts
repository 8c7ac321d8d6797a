import {leastPairGainDb, mostPairLossDb} from '../../../../profile/practice.ts';
import {energyMean} from '../../../../science/acoustics/decibels.ts';
import type {ReadingChange} from '../blendReadings.ts';
import type {NoiseReading} from '../noise.ts';
import {isSameOffset, type OffsetTolerances, type SubsOffset} from '../offset.ts';
import type {Added} from '../steps.ts';
import {readingsEach, type TrialVerdict} from '../verdict.ts';

/** What a change between subs is judged by; fronts and centre are absent where there is none. */
export type PairNoise = NoiseReading['what'];

/** A change between subs against what stood before it. */
export type PairTrial = {
	readonly from: SubsOffset;
	readonly to: SubsOffset;
	/** What was changed of some subs. */
	readonly added: Added;
	/** By what was read before and after, dB. */
	readonly gainsDb: {readonly [What in PairNoise]?: number};
	readonly verdict: TrialVerdict;
};

/** What decides a change between subs in a room with so many fronts. */
export function pairNoises(fronts: number): readonly PairNoise[] {
	return fronts === 0 ? ['lfe'] : fronts === 1 ? ['lfe', 'centre'] : ['lfe', 'centre', 'fronts'];
}

/**
Every change between subs that noise was read under, in the order in which they were first met.

Kept where the bass of the LFE channel is louder by enough and neither fronts nor centre are softer by more than readings
tell apart: each step verified by itself, so that nothing typed in later has to be undone. Before and after count only with
the same levels set.
*/
export function pairTrialsIn(
	noise: readonly NoiseReading[],
	fronts: number,
	tolerances: OffsetTolerances,
): PairTrial[] {
	const met: NoiseReading[] = [];
	for (const reading of noise)
		if (
			reading.base &&
			!met.some(
				({base, offset}) =>
					isSameOffset(base!, reading.base!, tolerances) && isSameOffset(offset, reading.offset, tolerances),
			)
		)
			met.push(reading);
	const wanted = pairNoises(fronts);
	return met.map(({base, offset: to, change}) => {
		const from = base!;
		const gains = wanted.map(what => [what, gainOf(noise, what, from, to, tolerances)] as const);
		const known = gains.flatMap(([what, gain]) => (gain === undefined ? [] : [[what, gain] as const]));
		const isOpen = known.length < gains.length;
		const isKept = known.every(
			([what, gain]) => gain >= (what === 'lfe' ? leastPairGainDb : -mostPairLossDb),
		);
		return {
			from,
			to,
			added: {delayMs: change!.addedMs, isTurned: change!.turned.length > 0, subs: movedIn(change!)},
			gainsDb: Object.fromEntries(known),
			verdict: isOpen ? 'open' : isKept ? 'kept' : 'put back',
		};
	});
}

const movedIn = ({delayed, turned}: ReadingChange) => (delayed.length > 0 ? delayed : turned);

function gainOf(
	noise: readonly NoiseReading[],
	what: PairNoise,
	from: SubsOffset,
	to: SubsOffset,
	tolerances: OffsetTolerances,
): number | undefined {
	const own = noise.filter(reading => reading.what === what && !reading.isSearch);
	const after = own.filter(
		({base, offset}) => base && isSameOffset(base, from, tolerances) && isSameOffset(offset, to, tolerances),
	);
	const balance = after.at(-1)?.balance;
	const under = (readings: readonly NoiseReading[]) => readings.filter(each => each.balance === balance);
	const [before, then] = [
		under(own.filter(({base, offset}) => !base && isSameOffset(offset, from, tolerances))),
		under(after),
	];
	if (before.length < readingsEach || then.length < readingsEach) return undefined;
	return energyMean(then.map(({levelDb}) => levelDb)) - energyMean(before.map(({levelDb}) => levelDb));
}
