import type {MeterReading} from '../../../profile/types.ts';
import type {BlendWish} from './blendResult.ts';
import {collect} from './collect.ts';
import type {BlendInputs} from './inputs.ts';
import {isSameOffset} from './offset.ts';
import {subLines} from './subsState.ts';
import {trialsIn} from './verification.ts';

/**
What noise before and after has verified, as delay and polarity of the subs on top of what distances give.

@returns `undefined` where nothing was verified, where distances alone were verified as the better, or where the
distances are not known: then delay and polarity are what distances give, both of them.
*/
export function blendWish(inputs: BlendInputs): BlendWish | undefined {
	if (!inputs.profile.meter?.some(isVerifying)) return undefined;
	const collected = collect(inputs);
	if (!collected.isPlaced) return undefined;
	const {trials, start} = trialsIn(collected);
	if (!trials.some(({verdict}) => verdict !== 'open')) return undefined;
	const kept = trials.findLast(({verdict}) => verdict === 'kept');
	const {laterMs, inverted, relation} = kept?.to.offset ?? start;
	if (isSameOffset({laterMs, inverted, relation}, collected.plain, collected.tolerances)) return undefined;
	const subs = new Map(
		subLines(inputs.profile, inputs.arrivalsMs).flatMap((line, index) =>
			line.subs.map(id => [id, {laterMs, isInverted: inverted !== relation[index]!.isTurned}] as const),
		),
	);
	return {
		offsetMs: laterMs,
		inverted,
		subs,
		...(kept?.frontsGainDb !== undefined && {frontsGainDb: kept.frontsGainDb}),
		...(kept?.centreGainDb !== undefined && {centreGainDb: kept.centreGainDb}),
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
