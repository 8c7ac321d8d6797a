import type {Observations} from '../../../profile/ask/readings.ts';
import {processorOf, subsOf} from '../../../profile/ask/subs.ts';
import type {ChannelId, InForce, MeterReading, Profile, SettingsSet} from '../../../profile/types.ts';
import {type LevelContext, weightingMemory} from './levels.ts';

type Standing = SettingsSet | Exclude<InForce, string>;

/** Settings that stood for each reading, from sets looked up by id once. */
export function levelContext(profile: Profile, observations: Observations): LevelContext {
	const sets = new Map((profile.settings ?? []).map(set => [set.id, set]));
	const standing = ({inForce}: MeterReading): Standing | undefined =>
		typeof inForce === 'string' ? sets.get(inForce) : inForce;
	const channels = new Set<string>(profile.channels.map(({id}) => id));
	const subs = new Map(subsOf(profile).map(sub => [sub.id, sub]));

	const gainInForce = (reading: MeterReading, source: string): number => {
		const set = standing(reading);
		if (!set) return 0;
		const sub = subs.get(source);
		if (sub) {
			const output = processorOf(profile, sub) ? set.outputs?.[sub.processorOutput!] : undefined;
			return (set.channels[sub.fedBy]?.trimDb?.stepped ?? 0) + (output?.gainDb?.stepped ?? 0);
		}

		if (channels.has(source)) return set.channels[source as ChannelId]?.trimDb?.stepped ?? 0;
		// Of several subs together the mean; how they differ is taken up where they are compared.
		const gains = source.split('+').flatMap(id => (subs.has(id) ? [gainInForce(reading, id)] : []));
		return gains.length === 0 ? 0 : gains.reduce((sum, gain) => sum + gain, 0) / gains.length;
	};

	const usual = usualMaster(observations, standing);
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

/** The master volume that most readings state; `undefined` where none does. */
function usualMaster(
	observations: Observations,
	standing: (reading: MeterReading) => Standing | undefined,
): number | undefined {
	const counts = new Map<number, number>();
	for (const readings of observations.meter.values()) {
		for (const reading of readings) {
			const master = standing(reading)?.masterVolumeDb;
			if (master !== undefined) counts.set(master, (counts.get(master) ?? 0) + 1);
		}
	}

	let usual: number | undefined;
	let most = 0;
	for (const [master, count] of counts) {
		if (count > most) [usual, most] = [master, count];
	}

	return usual;
}

/** Whether any reading says which settings stood, and whether all do. */
export function standingKnown(observations: Observations): 'all' | 'some' | 'none' {
	let known = 0;
	let total = 0;
	for (const [key, readings] of observations.meter) {
		if (key.endsWith('\nbackground')) continue;
		total += readings.length;
		for (const {inForce} of readings) if (inForce !== undefined) known++;
	}

	return known === 0 ? 'none' : known === total ? 'all' : 'some';
}
