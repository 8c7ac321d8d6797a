import {isLfe} from '../channels.ts';
import {lfeGainDb, recordedLevelSigmaDb, usualMainsBand, usualSubBand} from '../practice.ts';
import type {MeterReading, Profile, Recording} from '../types.ts';
import {effectOf, lineOf, orElse} from './lines.ts';
import {isForLevels, meterKey, type Observations, sourceNames} from './readings.ts';
import {type SetInForce, settingsInForce} from './settings.ts';
import {subsOf} from './subs.ts';

/** A level that follows from a recording and a meter's reading of another line; nobody read it. */
export type RecordedReading = MeterReading & {
	/** What the recording adds to the meter's own uncertainty, dB. */
	readonly recordedSigmaDb: number;
	/** Lines whose readings it hangs on. */
	readonly against: readonly string[];
};

/**
Levels that recordings give where no meter read: the difference to a line that was recorded in the same playing and read with
the meter. Of subs only where the microphone's curve was taken off, for recorders cut the bass, and where the meter does not
weight the speakers' band itself, as A does by half a decibel.

A meter's reading stands above it: of what it read at a seat nothing is told there.
*/
export function recordedReadings(profile: Profile): RecordedReading[] {
	if (!profile.recordings?.length) return [];
	const readings = (profile.meter ?? []).filter(isForLevels);
	const nameOf = sourceNames(profile);
	const read = new Set(readings.map(({seat, source}) => meterKey(seat, nameOf(source))));
	const isRead = (seat: string, source: readonly string[]) => read.has(meterKey(seat, nameOf([...source])));
	return profile.seats.flatMap(({id: seat}) => {
		const recording = profile.recordings!.findLast(
			each => each.seat === seat && !each.state && !each.setAside && settingsInForce(profile, each),
		);
		return recording ? ofRecording(profile, recording, readings, isRead) : [];
	});
}

function ofRecording(
	profile: Profile,
	recording: Recording,
	readings: readonly MeterReading[],
	isRead: (seat: string, source: readonly string[]) => boolean,
): RecordedReading[] {
	const {seat, inForce} = recording;
	const levels = new Map<string, number>();
	for (const {recording: id, part = 'all', source, levelDb, setAside} of profile.responses ?? [])
		if (id === recording.id && part === 'all' && !setAside && typeof source === 'string')
			if (levelDb !== undefined) levels.set(source, levelDb);
	const set = settingsInForce(profile, recording);
	const anchors = readings.filter(
		reading =>
			reading.seat === seat &&
			(reading.point ?? 1) === 1 &&
			typeof reading.source === 'string' &&
			levels.has(reading.source) &&
			!isLfe(reading.source) &&
			isMainsBand(reading),
	);
	const [first] = anchors;
	if (!first) return [];
	const alike = anchors.filter(({weighting}) => weighting === first.weighting);
	// What the meter shows above the recording, brought to the settings of the recording.
	const offsetDb =
		alike.reduce((sum, reading) => {
			const source = reading.source as string;
			const stood = settingsInForce(profile, reading) ?? set;
			const changedDb = gainOf(profile, set, source) - gainOf(profile, stood, source);
			return sum + reading.decibels + changedDb - levels.get(source)!;
		}, 0) / alike.length;
	const against = [...new Set(alike.map(({source}) => source as string))];
	const made = (
		source: readonly string[],
		decibels: number,
		more: Partial<MeterReading>,
	): RecordedReading[] =>
		isRead(seat, source)
			? []
			: [
					{
						source: source.length === 1 ? source[0]! : [...source],
						seat,
						decibels,
						weighting: first.weighting,
						round: 'first',
						...(inForce !== undefined && {inForce}),
						...more,
						recordedSigmaDb: recordedLevelSigmaDb * Math.SQRT2,
						against,
					},
				];
	return [...levels].flatMap(([source, levelDb]) => {
		if (!isLfe(source)) return made([source], levelDb + offsetDb, {signal: usualMainsBand});
		const subs = subsOf(profile).flatMap(({id, fedBy}) => (fedBy === source ? [id] : []));
		return recording.microphone === undefined || first.weighting === 'A' || subs.length === 0
			? []
			: made(subs, levelDb - lfeGainDb + offsetDb, {signal: usualSubBand, weighting: 'Z'});
	});
}

/** Observations with what recordings add to them. */
export function withRecorded(profile: Profile, observations: Observations): Observations {
	const added = recordedReadings(profile);
	if (added.length === 0) return observations;
	const nameOf = sourceNames(profile);
	const meter = new Map(observations.meter);
	for (const reading of added) meter.set(meterKey(reading.seat, nameOf(reading.source)), [reading]);
	return {...observations, meter};
}

function isMainsBand({signal}: MeterReading): boolean {
	return (
		signal === undefined ||
		(signal.kind === 'pink' &&
			signal.fromHertz === usualMainsBand.fromHertz &&
			signal.toHertz === usualMainsBand.toHertz)
	);
}

/** Trim and master volume of a line under settings, dB. */
function gainOf(profile: Profile, set: SetInForce | undefined, source: string): number {
	return orElse(effectOf(profile, set, lineOf(profile, source)).gainDb, 0) + (set?.masterVolumeDb ?? 0);
}
