import {isLfe} from '../../../profile/channels.ts';
import {usualCrossoverHertz} from '../../../profile/practice.ts';
import type {Profile} from '../../../profile/types.ts';

/** All that the blend is computed from. */
export type BlendInputs = {
	readonly profile: Profile;
	/** Arrivals at the reference seat with no delay dialled in, by speaker or sub, ms; what was not measured is absent. */
	readonly arrivalsMs: ReadonlyMap<string, number>;
	/** Crossovers as suggested, by channel, for readings that do not say which stood. */
	readonly suggestedHertz: ReadonlyMap<string, number | 'full'>;
};

/** The front speakers that the blend is made for: left, centre and right, else the first speaker there is. */
export function frontsOf(profile: Profile): readonly string[] {
	const mains = profile.channels.map(({id}) => id as string).filter(id => !isLfe(id as 'LFE1'));
	const fronts = ['FL', 'FC', 'FR'].filter(id => mains.includes(id));
	return fronts.length > 0 ? fronts : mains.slice(0, 1);
}

/** The front that is also listened to alone: the centre, else the first. */
export function centreOf(fronts: readonly string[]): string | undefined {
	return fronts.includes('FC') ? 'FC' : fronts[0];
}

/** One crossover for the period and the noise of all fronts: their geometric mean, hertz. */
export function commonHertz(crossovers: Iterable<number>): number {
	const logs = [...crossovers].map(Math.log);
	return logs.length === 0
		? usualCrossoverHertz
		: Math.exp(logs.reduce((sum, log) => sum + log, 0) / logs.length);
}

/** No room crosses over beyond these, hertz, though a profile may say so. */
const blendedHertz = {least: 20, most: 500} as const;

/** Whether subs and speakers meet at a crossover that can be blended; at full range they do not. */
export function isBlended(crossoverHertz: number | 'full' | undefined): crossoverHertz is number {
	return (
		typeof crossoverHertz === 'number' &&
		crossoverHertz >= blendedHertz.least &&
		crossoverHertz <= blendedHertz.most
	);
}
