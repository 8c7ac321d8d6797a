import {effectOf, type Line, lineOf, orElse} from '../../../profile/ask/lines.ts';
import type {Observations} from '../../../profile/ask/readings.ts';
import {type SetInForce, usualMasterDb} from '../../../profile/ask/settings.ts';
import {subsOf} from '../../../profile/ask/subs.ts';
import type {MeterReading, Profile} from '../../../profile/types.ts';
import {type LevelContext, weightingMemory} from './levels.ts';

/** Settings that stood for each reading, from sets looked up by id once. */
export function levelContext(profile: Profile, observations: Observations): LevelContext {
	const sets = new Map((profile.settings ?? []).map(set => [set.id, set]));
	const standing = ({inForce}: MeterReading): SetInForce | undefined =>
		typeof inForce === 'string' ? sets.get(inForce) : inForce;
	const lines = new Map<string, Line>();
	for (const {id} of [...profile.channels, ...subsOf(profile)]) lines.set(id, lineOf(profile, id));
	const subs = subsOf(profile).map(({id}) => id);

	const gainInForce = (reading: MeterReading, source: string): number => {
		const set = standing(reading);
		if (!set) return 0;
		const line = lines.get(source);
		// What nobody states counts as untouched.
		if (line) return orElse(effectOf(profile, set, line).gainDb, 0);
		// Of several subs together the mean; how they differ is taken up where they are compared.
		const named = new Set([reading.source].flat());
		const together = subs.filter(id => named.has(id) || named.has(lines.get(id)!.channel));
		const gains = together.map(id => gainInForce(reading, id));
		return gains.length === 0 ? 0 : gains.reduce((sum, gain) => sum + gain, 0) / gains.length;
	};

	const usual = usualMasterDb(profile, [...observations.meter.values()].flat());
	return {
		profile,
		observations,
		gainInForce,
		usualMasterDb: usual,
		masterOf: reading => {
			const master = standing(reading)?.masterVolumeDb;
			return master === undefined || usual === undefined ? 0 : master - usual;
		},
		weightingOf: weightingMemory(),
	};
}

/** Whether any reading says which settings stood, and whether all do. */
export function standingKnown(observations: Observations): 'all' | 'some' | 'none' {
	let known = 0;
	let total = 0;
	for (const readings of observations.meter.values()) {
		if (readings[0]!.source === 'background') continue;
		total += readings.length;
		for (const {inForce} of readings) if (inForce !== undefined) known++;
	}

	return known === 0 ? 'none' : known === total ? 'all' : 'some';
}
