import {standingSettings} from '../../../profile/ask/settings.ts';
import {subsOf} from '../../../profile/ask/subs.ts';
import type {Profile} from '../../../profile/types.ts';
import {cascade, throughFilter} from '../../../science/acoustics/filters/analogFilter.ts';
import {boxFilter} from '../../../science/acoustics/filters/box.ts';
import {butterworth} from '../../../science/acoustics/filters/butterworth.ts';
import {type ComplexCurve, filterResponse} from '../../../science/acoustics/filters/response.ts';
import {shapedFilter} from '../../../science/acoustics/filters/shape.ts';
import {bassManagement, mainsPath, subBox} from '../crossover/model.ts';
import {assumedBox} from '../crossover/suggest.ts';
import {crossoversOf} from '../crossoverMemory.ts';
import type {BlendGroups} from './groups.ts';
import type {StandingSet} from './standing.ts';

/** Band in which subs are matched to each other where no crossover is known, hertz at its middle. */
const usualSubMiddleHertz = 60;

/** What both groups of a pair go through, apart from air and room. */
export type BlendPaths = {
	/** Crossover that stands between the groups; for subs among themselves the middle of their band. */
	readonly crossoverHertz: number;
	/** The still and the moved group's response, ratio to their pass bands. */
	readonly still: (frequenciesHz: Float64Array) => ComplexCurve;
	readonly moved: (frequenciesHz: Float64Array) => ComplexCurve;
};

/** Crossover of a channel: as it stood, else as decided, else as suggested. */
export function crossoverOf(profile: Profile, set: StandingSet | undefined, id: string): number | 'full' {
	const key = id as keyof StandingSet['channels'];
	return (
		set?.channels[key]?.crossoverHertz ??
		standingSettings(profile)?.channels[key]?.crossoverHertz ??
		crossoversOf(profile).channels.get(key)?.hertz ??
		'full'
	);
}

function subFilter(profile: Profile, id: string) {
	const sub = subsOf(profile).find(candidate => candidate.id === id);
	if (!sub) return throughFilter;
	const low = boxFilter(subBox(sub));
	return sub.upperLimitHertz === undefined ? low : cascade(low, butterworth('low', 2, sub.upperLimitHertz));
}

/**
Filters and boxes in the way of both groups.

Groups of several are modelled by their first member: left and right are one model, and subs that differ are matched
one by one before.
*/
export function blendPaths(
	profile: Profile,
	set: StandingSet | undefined,
	{kind, still, moved}: BlendGroups,
): BlendPaths {
	const through = subFilter(profile, moved[0]!);
	if (kind === 'subs') {
		const other = subFilter(profile, still[0]!);
		return {
			crossoverHertz: usualSubMiddleHertz,
			still: grid => filterResponse(other, grid),
			moved: grid => filterResponse(through, grid),
		};
	}

	const management = bassManagement(profile.receiver?.crossover);
	const crossover = crossoverOf(profile, set, still[0]!);
	const {box} = assumedBox(profile.channels.find(({id}) => id === still[0])?.speaker);
	const lowPassHertz = crossover === 'full' ? (set ?? standingSettings(profile))?.lfeLowPassHertz : crossover;
	const mains = mainsPath(boxFilter(box), management, crossover);
	const subs =
		lowPassHertz === undefined
			? through
			: cascade(shapedFilter('low', management.lowPass, lowPassHertz), through);
	return {
		crossoverHertz: lowPassHertz ?? 80,
		still: grid => filterResponse(mains, grid),
		moved: grid => filterResponse(subs, grid),
	};
}

/** Members of a pair whose low end is not known, so that the phase of an assumed one counts. */
export function membersAssumed(profile: Profile, {still, moved}: BlendGroups): string[] {
	const subs = subsOf(profile);
	return [...still, ...moved].filter(
		id =>
			(subs.find(sub => sub.id === id) ?? profile.channels.find(channel => channel.id === id)?.speaker)
				?.lowLimitHertz === undefined,
	);
}

/** Known phase of the moved group ahead of the still one, radians. */
export function knownPhase(paths: BlendPaths, hertz: number): number {
	const grid = Float64Array.of(hertz);
	const still = paths.still(grid);
	const moved = paths.moved(grid);
	return Math.atan2(moved.imaginary[0]!, moved.real[0]!) - Math.atan2(still.imaginary[0]!, still.real[0]!);
}
