import {referenceSeat} from '../../../profile/ask/seats.ts';
import type {MeterReading, Profile} from '../../../profile/types.ts';
import {planSetting} from './actions.ts';
import type {Collected} from './collected.ts';
import type {NoiseReading} from './noise.ts';
import {isSameOffset, type SubsOffset} from './offset.ts';
import {type Added, type BlendStep, stepId} from './steps.ts';
import {readingsEach} from './verdict.ts';

/** A delay as the boxes make it, near the one wanted or a whole period from it, whichever they reach better, ms. */
export function reachableMs(
	profile: Profile,
	{set, subs, periodMs}: Pick<Collected, 'set' | 'subs' | 'periodMs'>,
	wantedMs: number,
): number {
	if (wantedMs === 0) return 0;
	const made = [wantedMs, wantedMs - Math.sign(wantedMs) * periodMs].map(wanted => {
		const addedMs = planSetting(profile, set, subs, wanted, false)?.addedMs ?? 0;
		return {addedMs: Number(addedMs.toFixed(4)), missMs: Math.abs(wanted - addedMs)};
	});
	const [near, far] = made as [(typeof made)[0], (typeof made)[0]];
	return near.missMs <= periodMs / 24 || near.missMs <= far.missMs ? near.addedMs : far.addedMs;
}

/** What a step needs to be made. */
type Wanted = Pick<BlendStep, 'part' | 'signal' | 'playInto'> & {
	readonly mains: readonly string[];
	readonly added: Added;
	readonly nth: number;
	readonly isTaken: boolean;
};

export function stepMaker(profile: Profile, {set, subs}: Pick<Collected, 'set' | 'subs'>) {
	const seat = referenceSeat(profile).id;
	return ({mains, ...wanted}: Wanted): BlendStep => {
		const {delayMs, isTurned} = wanted.added;
		const actions =
			delayMs === 0 && !isTurned
				? []
				: (planSetting(profile, set, wanted.added.subs ?? subs, delayMs, isTurned)?.actions ?? []);
		const step = {...wanted, source: [...mains, ...subs], seat, actions};
		return {...step, id: stepId(step)};
	};
}

/** The offset of a change on top of what stands. */
export function offsetWith({stands}: Pick<Collected, 'stands'>, {delayMs, isTurned}: Added): SubsOffset {
	return {...stands, laterMs: stands.laterMs + delayMs, inverted: stands.inverted !== isTurned};
}

/** Pink noise an octave about the crossover, hertz. */
export function noiseOf({
	crossoverHertz,
}: Pick<Collected, 'crossoverHertz'>): Extract<NonNullable<MeterReading['signal']>, {kind: 'pink'}> {
	const whole = (hertz: number) => Number(hertz.toFixed(1));
	return {kind: 'pink', fromHertz: whole(crossoverHertz / 2), toHertz: whole(crossoverHertz * 2)};
}

/**
Tones of every front with all subs, at three delays a third of a period apart, the third of them as the boxes make it with
fewer entries. A tone that is told already asks nothing.

@param isTold - Whether the readings of a front's tone give its level at every delay.
*/
export function toneSteps(
	profile: Profile,
	collected: Collected,
	isTold: (front: string, hertz: number) => boolean,
): BlendStep[] {
	const {fronts, periodMs, set, state, subs, sums, tolerances} = collected;
	const make = stepMaker(profile, collected);
	const [later, late, earlier] = [periodMs / 3, (2 * periodMs) / 3, -periodMs / 3].map(wanted =>
		reachableMs(profile, collected, wanted),
	) as [number, number, number];
	// Two thirds later or one third earlier tell the same beside one third later: whichever is less to type.
	const entries = (delayMs: number) => planSetting(profile, set, subs, delayMs, false)?.actions.length ?? 0;
	const delays = [...new Set([0, later, entries(earlier) < entries(late) ? earlier : late])];
	const offsets: Added[] = delays.map(delayMs => ({delayMs, isTurned: false}));
	// Boxes of coarse steps make two delays only; what stands, turned, is the third reading.
	if (delays.length < 3) offsets.push({delayMs: 0, isTurned: true});
	return offsets.flatMap(added =>
		fronts.flatMap(({id, tones}) =>
			tones.map(hertz => {
				const laterMs = state.laterMs.get(id)! + added.delayMs;
				const isRead = sums
					.get(id)
					?.get(hertz)
					?.some(
						reading =>
							(reading.inverted === state.inverted) !== added.isTurned &&
							Math.abs(reading.laterMs - laterMs) <= tolerances.togetherMs,
					);
				return make({
					part: 'tone',
					mains: [id],
					playInto: [id],
					signal: {kind: 'tone', hertz},
					added,
					nth: 1,
					isTaken: isRead || isTold(id, hertz),
				});
			}),
		),
	);
}

/** The ten settings of the search, in the order with the fewest changes. */
export function searchOffsets(profile: Profile, collected: Collected): Added[] {
	const {periodMs} = collected;
	const delays = [0, 1, 2, -1, -2].map(sixths => reachableMs(profile, collected, (sixths * periodMs) / 6));
	const [zero, one, two, minusOne, minusTwo] = delays as [number, number, number, number, number];
	const upright = [zero, one, two].map(delayMs => ({delayMs, isTurned: false}));
	const turned = [two, one, zero, minusOne, minusTwo].map(delayMs => ({delayMs, isTurned: true}));
	const back = [minusTwo, minusOne].map(delayMs => ({delayMs, isTurned: false}));
	const all = [...upright, ...turned, ...back];
	// Boxes of coarse steps make some of them alike.
	return all.filter(
		({delayMs, isTurned}, index) =>
			all.findIndex(one => one.delayMs === delayMs && one.isTurned === isTurned) === index,
	);
}

export function offsetSteps(profile: Profile, collected: Collected): BlendStep[] {
	const {fronts, noise, tolerances} = collected;
	const make = stepMaker(profile, collected);
	const mains = fronts.map(({id}) => id);
	return searchOffsets(profile, collected).map(added =>
		make({
			part: 'search',
			mains,
			playInto: mains,
			signal: noiseOf(collected),
			added,
			nth: 1,
			isTaken: noise.some(
				({isSearch, offset}) => isSearch && isSameOffset(offset, offsetWith(collected, added), tolerances),
			),
		}),
	);
}

/** Noise of one setting to verify it: the centre alone, then all fronts, each twice. */
export function verificationSteps(
	profile: Profile,
	collected: Collected,
	part: 'before' | 'after',
	added: Added,
	offset: SubsOffset,
): BlendStep[] {
	const {fronts, centre, noise, tolerances} = collected;
	const make = stepMaker(profile, collected);
	const all = fronts.map(({id}) => id);
	const kinds: ReadonlyArray<readonly [NoiseReading['what'], readonly string[]]> =
		fronts.length === 1
			? [['centre', all]]
			: [
					['centre', [centre!]],
					['fronts', all],
				];
	return kinds.flatMap(([what, mains]) => {
		const count = noise.filter(
			reading =>
				!reading.isSearch && reading.what === what && isSameOffset(reading.offset, offset, tolerances),
		).length;
		return Array.from({length: readingsEach}, (_, index) =>
			make({
				part,
				mains,
				playInto: mains,
				signal: noiseOf(collected),
				added,
				nth: index + 1,
				isTaken: count > index,
			}),
		);
	});
}
