import {effectOf, lineOf, orElse} from '../../../profile/ask/lines.ts';
import {meterSigmaOf} from '../../../profile/ask/readings.ts';
import {settingsInForce} from '../../../profile/ask/settings.ts';
import {nameOf} from '../../../profile/names.ts';
import type {MeterReading, Profile} from '../../../profile/types.ts';
import {energyMean} from '../../../science/acoustics/decibels.ts';
import type {Uncertain} from '../../../science/numeric/uncertain.ts';
import type {Change} from './profileDiff.ts';
import {changeScale} from './weights.ts';

type Group = {
	readonly source: string;
	readonly seat: string;
	readonly toneHertz?: number;
	readonly mean: Uncertain;
	/** Trim and master volume in force, dB; undefined where a reading does not tell them. */
	readonly inForceDb: number | undefined;
};

export const sourcesOf = (reading: Pick<MeterReading, 'source'>): readonly string[] =>
	typeof reading.source === 'string' ? [reading.source] : reading.source;

function inForceDb(profile: Profile, reading: MeterReading, source: string): number | undefined {
	const set = settingsInForce(profile, reading);
	const gainDb = orElse(effectOf(profile, set, lineOf(profile, source)).gainDb, undefined);
	return gainDb === undefined ? undefined : gainDb + (set?.masterVolumeDb ?? 0);
}

/** Energy mean of the readings of each source, seat, weighting and signal; first round, nothing set aside. */
function groupsOf(profile: Profile, rename: (id: string) => string): Map<string, Group> {
	const lists = new Map<string, {source: string; seat: string; readings: MeterReading[]}>();
	for (const reading of profile.meter ?? []) {
		if (reading.setAside || reading.round !== 'first' || reading.addedDelayMs) continue;
		const source = sourcesOf(reading).map(rename).sort().join('+');
		const signal = reading.signal
			? reading.signal.kind === 'tone'
				? `${reading.signal.hertz}`
				: `${reading.signal.fromHertz}-${reading.signal.toHertz}`
			: '';
		const seat = rename(reading.seat);
		const key = [source, seat, reading.weighting, signal].join('|');
		const list = lists.get(key);
		if (list) list.readings.push(reading);
		else lists.set(key, {source, seat, readings: [reading]});
	}

	const sigma = meterSigmaOf(profile);
	const groups = new Map<string, Group>();
	for (const [key, {source, seat, readings}] of lists) {
		const forces = readings.map(reading => {
			const ids = sourcesOf(reading);
			return ids.length === 1 ? inForceDb(profile, reading, ids[0]!) : undefined;
		});
		groups.set(key, {
			source,
			seat,
			...(readings[0]!.signal?.kind === 'tone' && {toneHertz: readings[0]!.signal.hertz}),
			mean: {
				value: energyMean(readings.map(({decibels}) => decibels)),
				sigma: sigma / Math.sqrt(readings.length),
			},
			inForceDb: forces.every(force => force !== undefined && force === forces[0]) ? forces[0] : undefined,
		});
	}

	return groups;
}

/** Two readings of one thing differ by less than this in 19 of 20 cases, standard uncertainties of the difference. */
const scatterSigmas = 2;

/** Levels that both profiles hold and that differ, as read and with the settings in force taken out. */
export function levelChanges(older: Profile, newer: Profile, rename: (id: string) => string): Change[] {
	const before = groupsOf(older, rename);
	const after = groupsOf(newer, id => id);
	const changes: Change[] = [];
	for (const [key, now] of after) {
		const then = before.get(key);
		if (!then) continue;
		const change = now.mean.value - then.mean.value;
		if (change === 0) continue;
		const withoutSettings =
			now.inForceDb === undefined || then.inForceDb === undefined
				? undefined
				: change - (now.inForceDb - then.inForceDb);
		const own = withoutSettings ?? change;
		const sigma = Math.hypot(then.mean.sigma, now.mean.sigma);
		changes.push({
			kind: 'level',
			about: now.source,
			name: nameOf(newer, now.source),
			seat: now.seat,
			seatName: nameOf(newer, now.seat),
			...(now.toneHertz !== undefined && {toneHertz: now.toneHertz}),
			before: then.mean,
			after: now.mean,
			change,
			...(withoutSettings === undefined ? {} : {withoutSettings}),
			sigma,
			isScatter: Math.abs(own) <= scatterSigmas * sigma,
			weight: Math.abs(own) / changeScale.dB,
		});
	}

	const missing = (side: 'older' | 'newer', one: typeof before, other: typeof before): Change[] => {
		const count = [...one.keys()].filter(key => !other.has(key)).length;
		return count > 0
			? [{kind: 'only in one', about: 'meter', side, readings: 'meter', count, weight: 0}]
			: [];
	};

	return [...changes, ...missing('older', before, after), ...missing('newer', after, before)];
}
