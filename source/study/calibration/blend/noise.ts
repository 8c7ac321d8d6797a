import type {BlendReading, ReadingChange} from './blendReadings.ts';
import {centreOf} from './inputs.ts';
import type {SubsOffset} from './offset.ts';
import type {SubsState} from './subsState.ts';

/** Noise of all fronts at once or of the centre alone, each with all subs; or of all subs through the LFE channel. */
export type NoiseReading = {
	readonly what: 'fronts' | 'centre' | 'lfe';
	readonly offset: SubsOffset;
	/** How the subs stood but for what was changed between them for this reading, and that; absent where nothing was. */
	readonly base?: SubsOffset;
	readonly change?: ReadingChange;
	/** Readings that differ in it were taken with the subs otherwise to each other, or to the fronts, in level. */
	readonly balance: string;
	/** The master volume is off it, and of the subs alone what the settings give them on average. */
	readonly levelDb: number;
	readonly sigmaDb: number;
	readonly isSearch: boolean;
	readonly index: number;
};

/** A reading with the settings of the subs that it was taken under, and as they played. */
export type ReadUnder = {
	readonly reading: BlendReading;
	readonly set: SubsState;
	readonly played: SubsState;
	/** Of its master volume above the one that stands, dB. */
	readonly louderDb: number;
};

export function offsetOf({meanLaterMs, inverted, relation}: SubsState): SubsOffset {
	return {laterMs: meanLaterMs, inverted, relation};
}

/**
The noise among readings that speaks of how subs add up.

@param subs - All of them: with some only nothing is said.
@param fronts - That the blend is made for.
*/
export function noiseIn(
	read: readonly ReadUnder[],
	subs: readonly string[],
	fronts: readonly string[],
): NoiseReading[] {
	return read.flatMap(({reading, set, played, louderDb}): NoiseReading[] => {
		const {signal, sounding, change, levelDb, sigmaDb, isSearch, index} = reading;
		if (signal.kind === 'tone' || sounding.subs.length < subs.length) return [];
		const what = whatSounds(sounding.mains, fronts);
		if (!what) return [];
		const isAmong = (ids: readonly string[]) => ids.length > 0 && ids.length < subs.length;
		const isChanged = isAmong(change.delayed) || isAmong(change.turned);
		return [
			{
				what,
				offset: offsetOf(played),
				...(isChanged && {base: offsetOf(set), change}),
				balance: balanceText(set, what),
				levelDb: levelDb - louderDb - (what === 'lfe' ? meanOf(set.gainsDb) : 0),
				sigmaDb,
				isSearch,
				index,
			},
		];
	});
}

/** How loud settings make the subs against each other, and where fronts play, against these; alike where the text is. */
export function balanceText({gainsDb, balanceDb}: SubsState, what: NoiseReading['what']): string {
	const [first = 0] = gainsDb;
	const apart = gainsDb.map(gain => (gain - first).toFixed(1));
	const toFronts = what === 'lfe' ? [] : [...balanceDb.values()].map(balance => balance.toFixed(1));
	return [...apart, ...toFronts].join(' ');
}

const meanOf = (values: readonly number[]) =>
	values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length);

/** Where there is one front only, its noise is both. */
function whatSounds(mains: readonly string[], fronts: readonly string[]): NoiseReading['what'] | undefined {
	if (mains.length === 0) return 'lfe';
	const centre = centreOf(fronts);
	if (mains.length === fronts.length && fronts.every(id => mains.includes(id)))
		return fronts.length === 1 ? 'centre' : 'fronts';
	return mains.length === 1 && mains[0] === centre ? 'centre' : undefined;
}
