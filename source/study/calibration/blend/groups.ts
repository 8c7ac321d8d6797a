import {subsOf} from '../../../profile/ask/subs.ts';
import type {MeterReading, Profile} from '../../../profile/types.ts';

/** What sounded in a reading, subs and other speakers apart, in the profile's order. */
export type Sounding = {readonly mains: readonly string[]; readonly subs: readonly string[]};

/**
Tells what sounded in a reading. An LFE channel stands for every sub that it feeds.

@returns A function that looks each source up once; `undefined` from it where something is named that the profile does not hold.
*/
export function soundings(profile: Profile): (source: MeterReading['source']) => Sounding | undefined {
	const subs = subsOf(profile);
	const known = new Map<string, Sounding | undefined>();
	const lookUp = (names: ReadonlySet<string>): Sounding | undefined => {
		const sounding = subs.filter(({id, fedBy}) => names.has(id) || names.has(fedBy)).map(({id}) => id);
		const feeds = new Set<string>(subs.map(({fedBy}) => fedBy));
		const mains = profile.channels
			.map(({id}) => id as string)
			.filter(id => names.has(id) && !feeds.has(id) && !sounding.includes(id));
		const all = new Set<string>([...subs.map(({id}) => id), ...feeds, ...mains]);
		return [...names].every(name => all.has(name)) ? {mains, subs: sounding} : undefined;
	};

	return source => {
		const key = typeof source === 'string' ? source : source.join('+');
		if (!known.has(key)) known.set(key, lookUp(new Set([source].flat())));
		return known.get(key);
	};
}
