import {meterKey, meterSigmaOf, type Observations} from '../../../profile/ask/readings.ts';
import type {RecordedReading} from '../../../profile/ask/recordedReadings.ts';
import {meterPriorFreedom} from '../../../profile/practice.ts';
import type {MeterReading, Profile, Weighting} from '../../../profile/types.ts';
import {type BackgroundCorrection, withoutBackground} from '../../../science/acoustics/background.ts';
import {type TestSpectrum, weightingOfSpectrum} from '../../../science/acoustics/band.ts';
import {energyMean, spread} from '../../../science/acoustics/decibels.ts';
import {combinedSigma, sampleDeviation} from '../../../science/numeric/statistics.ts';
import type {LevelResult} from '../result.ts';
import type {LevelFinding} from './facts.ts';
import {correctionFindings, levelSpreadFindings, recordedFinding} from './levelRemarks.ts';

/** What is the same for every level of one solution. */
export type LevelContext = {
	readonly profile: Profile;
	readonly observations: Observations;
	/** Trim and gain that stood when a reading of this source was taken, dB; 0 where unknown. */
	readonly gainInForce: (reading: MeterReading, source: string) => number;
	/** The master volume that most readings were taken at, dB; `undefined` where none says. */
	readonly usualMasterDb: number | undefined;
	/** Master volume relative to the one that most readings were taken at, dB. */
	readonly masterOf: (reading: MeterReading) => number;
	/** What the meter reads above the unweighted level, dB. */
	readonly weightingOf: (weighting: Weighting, spectrum: TestSpectrum) => number;
};

/** A level at one seat. */
export type SeatLevel = LevelResult & {
	/** What the level would be with no trim, dB: level minus the trim in force. */
	readonly atZeroTrimDb: number;
	/** Trim in force for the latest reading, dB. */
	readonly gainInForceDb: number;
	readonly singleSigmaDb: number;
	/** Points around the seat that were read. */
	readonly points: number;
	readonly remarks: readonly LevelFinding[];
};

/** Remembers the correction for each weighting and band; a profile has a handful of them. */
export function weightingMemory(): LevelContext['weightingOf'] {
	const known = new Map<string, number>();
	return (weighting, spectrum) => {
		const key =
			spectrum.kind === 'tone'
				? `${weighting} ${spectrum.hertz}`
				: `${weighting} ${spectrum.fromHertz} ${spectrum.toHertz}`;
		const value = known.get(key) ?? weightingOfSpectrum(weighting, spectrum);
		known.set(key, value);
		return value;
	};
}

type Group = {
	readonly values: number[];
	readonly weighting: Weighting;
	readonly spectrum: TestSpectrum;
	readonly gainDb: number;
	readonly masterDb: number;
	readonly point: number;
};

/**
Level of a source at a seat from its repeats, at one point or the mean of several around it.

Readings under the same conditions are averaged on energy, then the background is taken out, then the weighting is
corrected for the signal's band, then the meter's offset added; groups under different settings are brought to no trim
and the common master volume before they are averaged. Points count alike, however often each was read.

@returns `undefined` where there is no reading, or the background drowns all of them; `remarks` tells.
*/
export function seatLevel(
	context: LevelContext,
	seat: string,
	source: string,
	usualSpectrum: TestSpectrum,
): {readonly level?: SeatLevel; readonly remarks: readonly LevelFinding[]} {
	const {profile, observations} = context;
	const readings = observations.meter.get(meterKey(seat, source));
	if (!readings) return {remarks: []};
	const groups = grouped(context, readings, source, usualSpectrum);
	const priorSigma = meterSigmaOf(profile);
	const offsetDb = profile.kit?.meterOffsetDb ?? 0;
	const remarks: LevelFinding[] = [];
	// Where levels are made for several seats, it is told at which.
	const isSeveral = profile.target?.seats === 'weighted' && profile.seats.length > 1;
	const subject = {about: source.split('+'), ...(isSeveral && {seat})};
	const used = groups.flatMap(group => {
		const readDb = energyMean(group.values);
		const background = backgroundOf(context, seat, group.weighting);
		const corrected: BackgroundCorrection =
			background === undefined
				? {verdict: 'left out', levelDb: readDb, correctionDb: 0, sigmaFactor: 1}
				: withoutBackground(readDb, background);
		const weightingDb = context.weightingOf(group.weighting, group.spectrum);
		remarks.push(...correctionFindings(subject, {group, readDb, background, corrected, weightingDb}));
		if (corrected.verdict === 'refused') return [];
		const shiftDb = corrected.correctionDb - weightingDb + offsetDb - group.gainDb - group.masterDb;
		return [{group, corrected, weightingDb, shiftDb, atZeroTrimDb: readDb + shiftDb}];
	});
	if (used.length === 0) return {remarks};

	const repeats = used.reduce((sum, {group}) => sum + group.values.length, 0);
	const points = byPoint(
		used.map(({group: {point, values}, shiftDb}) => ({point, values: values.map(value => value + shiftDb)})),
	);
	const alike = points.flat();
	const atZeroTrimDb = energyMean(points.map(values => energyMean(values)));
	const last = used.at(-1)!;
	const factor = Math.max(...used.map(({corrected}) => corrected.sigmaFactor));
	const singleSigmaDb = pooledSigma(priorSigma, points) * factor;
	// An error of the background itself moves the corrected level by (factor − 1) of it.
	const recorded = readings.find((reading): reading is RecordedReading => 'recordedSigmaDb' in reading);
	const sigmaDb = combinedSigma(
		singleSigmaDb / Math.sqrt(repeats),
		(factor - 1) * priorSigma,
		recorded?.recordedSigmaDb ?? 0,
	);
	if (recorded) remarks.push(recordedFinding(subject, recorded, sigmaDb));
	// Points differ by what the room does; only repeats at one of them should agree.
	for (const values of points)
		remarks.push(...levelSpreadFindings(subject, values, last.shiftDb, priorSigma));
	return {
		remarks,
		level: {
			decibels: atZeroTrimDb + last.group.gainDb,
			atZeroTrimDb,
			gainInForceDb: last.group.gainDb,
			sigmaDb,
			singleSigmaDb,
			repeats,
			points: points.length,
			spreadDb: spread(alike),
			backgroundCorrectionDb: last.corrected.correctionDb,
			weightingCorrectionDb: last.weightingDb === 0 ? 0 : -last.weightingDb,
			remarks,
		},
	};
}

/**
What is known of the meter beforehand and what the repeats show, together: the more repeats, the more they count.
*/
function pooledSigma(priorSigma: number, points: ReadonlyArray<readonly number[]>): number {
	let freedom = meterPriorFreedom;
	let squares = meterPriorFreedom * priorSigma ** 2;
	for (const values of points) {
		freedom += values.length - 1;
		squares += (values.length - 1) * sampleDeviation(values) ** 2;
	}

	return Math.sqrt(squares / freedom);
}

/** Levels by the point that they were read at. */
function byPoint(
	groups: ReadonlyArray<{readonly point: number; readonly values: readonly number[]}>,
): number[][] {
	const points = new Map<number, number[]>();
	for (const {point, values} of groups) points.set(point, [...(points.get(point) ?? []), ...values]);
	return [...points.values()];
}

/** The group of the latest reading comes last. */
function grouped(
	context: LevelContext,
	readings: readonly MeterReading[],
	source: string,
	usualSpectrum: TestSpectrum,
): Group[] {
	const groups: Group[] = [];
	let group: Group | undefined;
	for (const reading of readings) {
		const {weighting, point = 1} = reading;
		const gainDb = context.gainInForce(reading, source);
		const masterDb = context.masterOf(reading);
		const spectrum = reading.signal ?? usualSpectrum;
		const isAlike = (other: Group) =>
			other.point === point &&
			other.weighting === weighting &&
			other.gainDb === gainDb &&
			other.masterDb === masterDb &&
			isSameSpectrum(other.spectrum, spectrum);
		if (!group || !isAlike(group)) {
			group = groups.find(isAlike);
			if (!group) {
				group = {values: [], weighting, spectrum, gainDb, masterDb, point};
				groups.push(group);
			}
		}

		group.values.push(reading.decibels);
	}

	return [...groups.filter(other => other !== group), ...(group ? [group] : [])];
}

function isSameSpectrum(a: TestSpectrum, b: TestSpectrum): boolean {
	if (a.kind === 'tone' || b.kind === 'tone')
		return a.kind === 'tone' && b.kind === 'tone' && a.hertz === b.hertz;
	return a.fromHertz === b.fromHertz && a.toHertz === b.toHertz;
}

/** Energy mean of the background at a seat, read with the same weighting; dB as read. */
function backgroundOf({observations}: LevelContext, seat: string, weighting: Weighting): number | undefined {
	const readings = observations.meter.get(meterKey(seat, 'background')) ?? [];
	const levels = readings.filter(reading => reading.weighting === weighting).map(({decibels}) => decibels);
	return levels.length === 0 ? undefined : energyMean(levels);
}
