import {standingSettings} from '../../../profile/ask/settings.ts';
import {subsOf} from '../../../profile/ask/subs.ts';
import {isLfe} from '../../../profile/channels.ts';
import type {ChannelId, Profile, Sub} from '../../../profile/types.ts';
import {coherentSum, energySum} from '../../../science/acoustics/decibels.ts';
import type {CrossoverSuggestion} from '../crossover/result.ts';
import type {Parts} from '../parts.ts';
import {distanceFinder} from './distances.ts';
import type {HeadroomLack} from './facts.ts';
import {atDistance, reachAtOneMetre} from './reach.ts';
import {headroomRemarks} from './remarks.ts';
import type {HeadroomResult, SeatHeadroom, SourceHeadroom} from './result.ts';

/**
Levels of full-scale sound at reference gain, dB at the seat: 85 dB at −20 dBFS, and 10 dB more for the LFE channel.
In the AES17 convention they are the RMS levels of a full-scale sine, so that an amplifier's sine watts compare directly.

@see SMPTE RP 200 for 85 dB at −20 dBFS; ITU-R BS.775-3, Annex 7, for the 10 dB (both known as quotations only, neither was opened).
*/
export const referencePeakDb = {mains: 105, lfe: 115} as const;

/** Crossover of each channel: as decided, else as suggested. */
function crossovers(
	profile: Profile,
	suggested: CrossoverSuggestion['channels'],
): ReadonlyMap<ChannelId, number | 'full'> {
	const decided = standingSettings(profile)?.channels ?? {};
	return new Map(
		profile.channels
			.filter(({id}) => !isLfe(id))
			.map(({id}) => [id, decided[id]?.crossoverHertz ?? suggested.get(id)?.hertz ?? 'full']),
	);
}

function seatOf(
	seat: string,
	distanceM: number | undefined,
	reachDb: number | undefined,
	neededDb: number,
): SeatHeadroom {
	return {
		seat,
		...(distanceM !== undefined && {distanceM}),
		...(reachDb !== undefined && {reachDb, marginDb: reachDb - neededDb}),
	};
}

function subsHeadroom(
	profile: Profile,
	distanceOf: ReturnType<typeof distanceFinder>,
	redirected: number,
	roomGainDb: number,
): SourceHeadroom | undefined {
	const subs = subsOf(profile);
	if (subs.length === 0) return undefined;
	const hasLfe = profile.channels.some(({id}) => isLfe(id));
	const sources = [
		...(hasLfe ? [referencePeakDb.lfe] : []),
		...Array.from({length: redirected}, () => referencePeakDb.mains),
	];
	if (sources.length === 0) return undefined;
	const neededDb = energySum(sources);
	const missing = new Set<HeadroomLack>();
	const reaches = subs.map(largestLevelOf);
	if (reaches.includes(undefined)) missing.add('largest level of each sub');
	const seats = profile.seats.map(({id: seat}) => {
		const distances = subs.map(({id}) => distanceOf(id, seat));
		if (distances.includes(undefined)) missing.add('distances of the subs');
		const levels = reaches.flatMap((levelDb, index) => {
			const distanceM = distances[index];
			return levelDb === undefined || distanceM === undefined ? [] : [atDistance(levelDb, distanceM)];
		});
		const isWhole = levels.length === subs.length;
		// Aligned subs add in phase in the bass, where the wave is longer than their mismatch.
		return seatOf(
			seat,
			distances.length === 1 ? distances[0] : undefined,
			isWhole ? coherentSum(levels) + roomGainDb : undefined,
			neededDb,
		);
	});
	return {source: 'subs', subs: subs.map(({id}) => id), neededDb, seats, missing: [...missing]};
}

/** Largest level of a sub at 1 m, dB: as stated, else by sensitivity and power; undefined where neither is. */
function largestLevelOf(sub: Sub): number | undefined {
	if (sub.maximumLevelDb !== undefined) return sub.maximumLevelDb;
	const reach = reachAtOneMetre(sub);
	return 'decibels' in reach ? reach.decibels : undefined;
}

/**
The level that each channel and the subs can reach at each seat, held against reference gain, and the first to give out.

High-passed mains are judged on their own band, where their sensitivity is stated; the bass taken from them is added to
what the subs must do, on energy. Room gain is 0 unless the profile states one.

@param profile - Read: channels, subs, seats, tape readings, room, and the settings decided.
*/
export function headroom(profile: Profile, parts: Parts): HeadroomResult {
	const roomGainDb = profile.room.bassGainDb ?? 0;
	const crossoverOf = crossovers(profile, parts.crossovers.channels);
	const distanceOf = distanceFinder(profile, parts.survey);
	const mains = profile.channels.filter(({id}) => !isLfe(id));
	const sources: SourceHeadroom[] = mains.map(({id, speaker}) => {
		const reach = reachAtOneMetre(speaker ?? {});
		const missing: HeadroomLack[] = 'missing' in reach ? [...reach.missing] : [];
		const seats = profile.seats.map(({id: seat}) => {
			const distanceM = distanceOf(id, seat);
			const reachDb =
				'missing' in reach || distanceM === undefined ? undefined : atDistance(reach.decibels, distanceM);
			return seatOf(seat, distanceM, reachDb, referencePeakDb.mains);
		});
		if (seats.some(({distanceM}) => distanceM === undefined)) missing.push('distance');
		return {
			source: id,
			neededDb: referencePeakDb.mains,
			crossoverHertz: crossoverOf.get(id)!,
			seats,
			missing,
		};
	});
	const redirected = [...crossoverOf.values()].filter(hertz => hertz !== 'full').length;
	const subs = subsHeadroom(profile, distanceOf, redirected, roomGainDb);
	if (subs) sources.push(subs);

	let first: HeadroomResult['first'];
	for (const {source, seats} of sources) {
		for (const {seat, marginDb} of seats) {
			if (marginDb !== undefined && (!first || marginDb < first.masterVolumeDb))
				first = {source, seat, masterVolumeDb: marginDb};
		}
	}

	return {
		sources,
		...(first && {first}),
		roomGainDb,
		remarks: headroomRemarks(profile, sources, first, redirected),
	};
}
