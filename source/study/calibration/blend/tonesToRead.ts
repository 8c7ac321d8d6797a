import {referenceSeat} from '../../../profile/ask/seats.ts';
import type {Profile} from '../../../profile/types.ts';
import type {BlendGroups} from './groups.ts';
import {sounding} from './groups.ts';
import {blendTones} from './steps.ts';

/** A tone this near counts as the one asked for, octaves: less than half the way to its neighbour. */
const nearOctaves = 1 / 8;

/**
Tones to read for a pair: those about its crossover, or where readings were begun with a tone close to one, that tone,
so that a generator with steps of its own serves as well.

@returns Hertz, rising, as many as `blendTones` gives.
*/
export function tonesToRead(profile: Profile, {still, moved}: BlendGroups, crossoverHertz: number): number[] {
	const seat = referenceSeat(profile).id;
	const members = new Set([...still, ...moved]);
	const counts = new Map<number, number>();
	for (const {setAside, seat: at, signal, source} of profile.meter ?? []) {
		if (setAside || at !== seat || signal?.kind !== 'tone') continue;
		const found = sounding(profile, source);
		if (!found || ![...found.mains, ...found.subs].every(id => members.has(id))) continue;
		counts.set(signal.hertz, (counts.get(signal.hertz) ?? 0) + 1);
	}

	return blendTones(crossoverHertz).map(hertz => {
		if (counts.has(hertz)) return hertz;
		let best: {readonly hertz: number; readonly count: number} | undefined;
		for (const [read, count] of counts) {
			if (Math.abs(Math.log2(read / hertz)) < nearOctaves && count > (best?.count ?? 0))
				best = {hertz: read, count};
		}

		return best?.hertz ?? hertz;
	});
}
