import type {MeterReading} from '../../../profile/types.ts';
import {trialsIn} from './blend.ts';
import type {BlendWish} from './blendResult.ts';
import {collect} from './collect.ts';
import type {BlendInputs} from './inputs.ts';
import {isSameOffset, type SubsOffset} from './offset.ts';
import {subLines} from './subsState.ts';

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
	const plain: SubsOffset = {
		laterMs: 0,
		inverted: false,
		relation: relation.map(() => ({apartMs: 0, isTurned: false})),
	};
	if (isSameOffset({laterMs, inverted, relation}, plain, collected.tolerances)) return undefined;
	const lines = subLines(inputs.profile, inputs.arrivalsMs);
	const middleMs = relation.reduce((sum, {apartMs}) => sum + apartMs, 0) / relation.length;
	// What steps leave between the subs is no wish of anybody's.
	const isTogether = relation.every(({apartMs}) => Math.abs(apartMs) <= collected.tolerances.apartMs);
	const subs = new Map(
		lines.flatMap((line, index) =>
			line.subs.map(id => {
				const {apartMs, isTurned} = relation[index]!;
				const ownMs = laterMs + (isTogether ? 0 : apartMs - middleMs);
				return [id, {laterMs: ownMs, isInverted: inverted !== isTurned}] as const;
			}),
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
