import type {MeterReading} from '../../../profile/types.ts';
import type {BlendWish} from './blendResult.ts';
import {collect} from './collect.ts';
import type {BlendInputs} from './inputs.ts';
import {isSameOffset} from './offset.ts';
import {trialsIn} from './verification.ts';

/**
What noise before and after has verified, as delay and polarity of the subs on top of what distances give: between the
subs, and of all of them against the fronts.

@returns `undefined` where nothing was verified, where distances alone were verified as the better, or where the
distances are not known: then delay and polarity are what distances give, both of them.
*/
export function blendWish(inputs: BlendInputs): BlendWish | undefined {
	if (!inputs.profile.meter?.some(isVerifying)) return undefined;
	const collected = collect(inputs);
	if (!collected.isPlaced) return undefined;
	const {trials, start} = trialsIn(collected);
	const pair = collected.pair.kept;
	const isVerified = trials.some(({verdict}) => verdict !== 'open');
	if (!isVerified && !pair) return undefined;
	const kept = trials.findLast(({verdict}) => verdict === 'kept');
	const offset = kept?.to.offset ?? (isVerified ? start : pair!.to);
	if (isSameOffset(offset, collected.plain, collected.tolerances)) return undefined;
	const {laterMs, inverted, relation} = offset;
	// What the steps of the boxes left between subs that should arrive at once is nobody's wish.
	const apartMs = relation.map((_, index) => pair?.to.relation[index]?.apartMs ?? 0);
	const meanMs = apartMs.reduce((sum, ms) => sum + ms, 0) / Math.max(1, apartMs.length);
	const subs = new Map(
		collected.lines.flatMap((line, index) => {
			const isInverted = inverted !== relation[index]!.isTurned;
			return line.subs.map(id => [id, {laterMs: laterMs + apartMs[index]! - meanMs, isInverted}] as const);
		}),
	);
	return {
		offsetMs: laterMs,
		inverted,
		subs,
		...(kept?.frontsGainDb !== undefined && {frontsGainDb: kept.frontsGainDb}),
		...(kept?.centreGainDb !== undefined && {centreGainDb: kept.centreGainDb}),
		...(pair && {
			pair: {
				subs: pair.added.subs ?? [],
				laterMs: pair.added.delayMs,
				isTurned: pair.added.isTurned,
				lfeGainDb: pair.gainsDb.lfe!,
				isAlone: !kept,
			},
		}),
	};
}

/** Quick to tell, so that a profile without any costs nothing. */
function isVerifying({signal, source, blendPart, round}: MeterReading): boolean {
	return round === 'first' && signal?.kind === 'pink' && Array.isArray(source) && blendPart !== 'search';
}

/** Arrivals as they would be if the subs were early by what is wished: made equal, the subs then arrive as verified. */
export function withoutWish<Arrival extends {readonly value: number}>(
	arrivals: ReadonlyMap<string, Arrival>,
	wish: BlendWish | undefined,
): ReadonlyMap<string, Arrival> {
	if (!wish) return arrivals;
	return new Map(
		[...arrivals].map(([id, arrival]) => [
			id,
			{...arrival, value: arrival.value - (wish.subs.get(id)?.laterMs ?? 0)},
		]),
	);
}
