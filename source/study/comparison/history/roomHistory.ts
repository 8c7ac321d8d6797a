import {median} from '../../../science/numeric/statistics.ts';
import type {
	ChannelFigures,
	ChannelHistory,
	HistoryEntry,
	HistoryPoint,
	RoomHistory,
} from './historyEntry.ts';

const daysPerYear = 365.25;
/** Drifts below this are nobody's concern, dB. */
const leastDriftDb = 1;

type Drift = {readonly index: number; readonly driftDb: number; readonly sigmaDb: number};

/** Years from one ISO date to another. */
export function yearsBetween(fromDate: string, toDate: string): number {
	return (Date.parse(toDate) - Date.parse(fromDate)) / 86_400_000 / daysPerYear;
}

/** Own level brought to one distance by the law of free field, with what that leaves open: half of the correction. */
function atOneMetre({ownDb, sigmaDb, distanceMetres}: ChannelFigures, baseMetres: number | undefined) {
	const byDistance =
		distanceMetres !== undefined && baseMetres !== undefined && distanceMetres > 0 && baseMetres > 0
			? 20 * Math.log10(distanceMetres / baseMetres)
			: 0;
	return {levelDb: ownDb! + byDistance, sigmaDb: Math.hypot(sigmaDb ?? 0, byDistance / 2)};
}

/**
How each channel's own level changed since its first profile, before the change common to all is taken out.
Another speaker starts anew.
*/
function rawDrifts(entries: readonly HistoryEntry[], id: string): Drift[] {
	let base: {readonly figures: ChannelFigures; readonly sigmaDb: number} | undefined;
	let drifts: Drift[] = [];
	for (const [index, {channels}] of entries.entries()) {
		const figures = channels.get(id);
		if (figures?.ownDb === undefined) continue;
		if (!base || base.figures.speaker !== figures.speaker) {
			base = {figures, sigmaDb: figures.sigmaDb ?? 0};
			drifts = [{index, driftDb: 0, sigmaDb: 0}];
			continue;
		}

		const now = atOneMetre(figures, base.figures.distanceMetres);
		drifts.push({
			index,
			driftDb: now.levelDb - base.figures.ownDb!,
			sigmaDb: Math.hypot(now.sigmaDb, base.sigmaDb),
		});
	}

	return drifts;
}

/** Change over the whole span: the last drift, or from three on the straight line through all of them. */
function trendOf(drifts: readonly Drift[], dates: readonly string[]) {
	const last = drifts.at(-1)!;
	const first = drifts[0]!;
	if (drifts.length === 2) return {value: last.driftDb, sigma: last.sigmaDb};
	const noise = median(drifts.slice(1).map(({sigmaDb}) => sigmaDb)) / Math.SQRT2;
	const years = drifts.map(({index}) => yearsBetween(dates[first.index]!, dates[index]!));
	const meanYear = years.reduce((sum, year) => sum + year, 0) / years.length;
	const spread = years.reduce((sum, year) => sum + (year - meanYear) ** 2, 0);
	const span = years.at(-1)!;
	if (spread === 0) return {value: last.driftDb, sigma: last.sigmaDb};
	const slope =
		drifts.reduce((sum, {driftDb}, index) => sum + driftDb * (years[index]! - meanYear), 0) / spread;
	return {value: slope * span, sigma: (noise * span) / Math.sqrt(spread)};
}

/**
The profiles of one room, oldest to newest, and how each channel's figures went.

Drift is the change of a channel's own level (without trim and master volume) since its first profile that neither its
distance (20·lg of the ratio) nor a change common to all channels (the middle one) explains: a failing driver, a
turned knob, or furniture moved without the tape.

@param entries - Of one room, in any order.
The distance correction is the free-field law, 6 dB for each doubling (first principles: the same power through a sphere of
four times the area); in a room it is the most that distance can do.
*/
export function roomHistory(entries: readonly HistoryEntry[]): RoomHistory {
	const sorted = [...entries].sort((a, b) => a.date.localeCompare(b.date) || a.id.localeCompare(b.id));
	const dates = sorted.map(({date}) => date);
	const names = new Map(
		sorted.flatMap(({channels}) => [...channels].map(([id, {name}]) => [id, name] as const)),
	);
	const raw = new Map([...names.keys()].map(id => [id, rawDrifts(sorted, id)]));

	// What all channels share in a profile: another meter, another master volume, another test signal.
	const shared = sorted.map((_, index) => {
		const drifts = [...raw].flatMap(([id, list]) => {
			const drift = list.find(one => one.index === index);
			return drift && drift !== list[0]
				? [{...drift, isSub: sorted[index]!.channels.get(id)?.isSub ?? false}]
				: [];
		});
		const mains = drifts.filter(({isSub}) => !isSub);
		const used = mains.length >= 3 ? mains : drifts;
		if (used.length < 3) return {driftDb: 0, sigmaDb: 0};
		const sigma = median(used.map(({sigmaDb}) => sigmaDb));
		// Efficiency of the median of normal values, π/2 of the mean's variance.
		return {
			driftDb: median(used.map(({driftDb}) => driftDb)),
			sigmaDb: sigma * Math.sqrt(Math.PI / 2 / used.length),
		};
	});

	const channels = [...names].map(([id, name]): ChannelHistory => {
		const drifts = (raw.get(id) ?? []).map((drift, order) => {
			if (order === 0) return drift;
			const common = shared[drift.index]!;
			return {
				index: drift.index,
				driftDb: drift.driftDb - common.driftDb,
				sigmaDb: Math.hypot(drift.sigmaDb, common.sigmaDb),
			};
		});
		const byIndex = new Map(drifts.map(drift => [drift.index, drift]));
		const points = sorted.map(({date, channels: figures}, index): HistoryPoint => {
			const {distanceMetres, levelDb, trimDb, dip, decaySeconds} = figures.get(id) ?? {};
			const drift = byIndex.get(index);
			return {
				date,
				...(distanceMetres !== undefined && {distanceMetres}),
				...(levelDb !== undefined && {levelDb}),
				...(trimDb !== undefined && {trimDb}),
				...(dip && {dip}),
				...(decaySeconds !== undefined && {decaySeconds}),
				...(drift && {driftDb: drift.driftDb, sigmaDb: drift.sigmaDb}),
			};
		});
		if (drifts.length < 2) return {id, name, points};
		const {value, sigma} = trendOf(drifts, dates);
		const isReal = Math.abs(value) > Math.max(leastDriftDb, 3 * sigma);
		const [fromDate, toDate] = [dates[drifts[0]!.index]!, dates[drifts.at(-1)!.index]!];
		const drift = {fromDate, toDate, years: yearsBetween(fromDate, toDate), value, sigma, isReal};
		return {id, name, points, drift};
	});
	return {
		room: sorted[0]?.room ?? '',
		profiles: sorted.map(({id, name, date}) => ({id, name, date})),
		channels,
	};
}
