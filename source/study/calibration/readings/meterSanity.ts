import {isForLevels, joinedName, meterSigmaOf, observe, sourceNames} from '../../../profile/ask/readings.ts';
import {subsOf} from '../../../profile/ask/subs.ts';
import {finding} from '../../../profile/finding.ts';
import {farFromOthersDb, testSignalDb, usualMainsBand, usualSubBand} from '../../../profile/practice.ts';
import type {MeterReading, Profile} from '../../../profile/types.ts';
import {withoutBackground} from '../../../science/acoustics/background.ts';
import {weightingOfSpectrum} from '../../../science/acoustics/band.ts';
import {median} from '../../../science/numeric/statistics.ts';
import {levelContext} from '../levels/levelContext.ts';
import type {LevelContext} from '../levels/levels.ts';
import type {TypedFinding} from './facts.ts';

/** From this level on, hours count. @see NIOSH 98-126: 85 dBA over eight hours, halved for every 3 dB. */
const cautionDb = 85;

/**
What strikes at once about a meter reading that was just typed, before it is computed with.

@param reading - May already be in the profile (as the same object) or not.
@returns Most serious first; empty where nothing strikes.
*/
export function remarkOnMeter(profile: Profile, reading: MeterReading): TypedFinding[] {
	const source = sourceNames(profile)(reading.source);
	const {decibels: levelDb} = reading;
	if (source === 'background') return backgroundFindings(reading);
	if (levelDb < testSignalDb.least || levelDb > testSignalDb.most) {
		const meantDb = [levelDb * 10, levelDb / 10, levelDb / 100, -levelDb].find(
			value => value >= 50 && value <= 110,
		);
		const facts = meantDb === undefined ? {levelDb} : {levelDb, meantDb};
		return [finding('problem', 'level-impossible', [source], facts)];
	}

	const found: TypedFinding[] = [...drowned(profile, reading, source)];
	if (isForLevels(reading)) found.push(...comparisons(profile, reading, source));
	found.push(...wrongWeighting(profile, reading, source));
	if (levelDb >= cautionDb) {
		const hours = 8 * 2 ** ((cautionDb - levelDb) / 3);
		found.push(finding('note', 'loud', [source], {levelDb, hours}));
	}

	return found;
}

function backgroundFindings({decibels: levelDb, seat}: MeterReading): TypedFinding[] {
	if (levelDb < 0 || levelDb > testSignalDb.most)
		return [finding('problem', 'background-impossible', [], {levelDb})];
	return levelDb < 60 ? [] : [finding('doubt', 'background-loud', [], {seat, levelDb})];
}

function drowned(profile: Profile, reading: MeterReading, source: string): TypedFinding[] {
	const backgrounds = (profile.meter ?? []).filter(
		other =>
			other.source === 'background' &&
			!other.setAside &&
			other.seat === reading.seat &&
			other.weighting === reading.weighting,
	);
	if (backgrounds.length === 0) return [];
	const {decibels: levelDb} = reading;
	const backgroundDb = median(backgrounds.map(({decibels}) => decibels));
	const {verdict} = withoutBackground(levelDb, backgroundDb);
	if (verdict !== 'refused' && verdict !== 'unreliable') return [];
	const isLost = verdict === 'refused';
	const facts = {levelDb, aboveDb: levelDb - backgroundDb, backgroundDb, isLost};
	return [finding(isLost ? 'problem' : 'doubt', 'level-drowned', [source], facts)];
}

/** Against the repeats, or, for a first reading, against the other channels; both with the same settings in force. */
function comparisons(profile: Profile, reading: MeterReading, source: string): TypedFinding[] {
	const observations = observe({...profile, meter: (profile.meter ?? []).filter(other => other !== reading)});
	const context = levelContext(profile, observations);
	const own: number[] = [];
	const others: number[] = [];
	const subs = new Set([...subsOf(profile).map(({id}) => id), joinedName(subsOf(profile).map(({id}) => id))]);
	const nameOfSource = sourceNames(profile);
	for (const readings of observations.meter.values()) {
		const otherSource = nameOfSource(readings[0]!.source);
		if (readings[0]!.seat !== reading.seat || otherSource === 'background') continue;
		if (otherSource === source) own.push(...readings.map(other => alike(context, other, source, subs)));
		else if (!otherSource.includes('+')) {
			others.push(...readings.map(other => alike(context, other, otherSource, subs)));
		}
	}

	const level = alike(context, reading, source, subs);
	const sigma = meterSigmaOf(profile);
	const {decibels: levelDb} = reading;
	if (own.length > 0) {
		const differenceDb = level - median(own);
		if (Math.abs(differenceDb) <= 2 * Math.SQRT2 * sigma) return [];
		const facts = {levelDb, differenceDb, repeats: own.length};
		return [finding('doubt', 'level-far-from-repeats', [source], facts)];
	}

	if (others.length === 0 || source.includes('+')) return [];
	const differenceDb = level - median(others);
	if (Math.abs(differenceDb) <= farFromOthersDb) return [];
	const facts = {levelDb, differenceDb, others: others.length};
	return [finding('doubt', 'level-far-from-others', [source], facts)];
}

/** Level without weighting, trim and master volume, so that readings under different conditions compare. */
function alike(
	context: LevelContext,
	reading: MeterReading,
	source: string,
	subs: ReadonlySet<string>,
): number {
	const spectrum = reading.signal ?? (subs.has(source) ? usualSubBand : usualMainsBand);
	return (
		reading.decibels -
		context.weightingOf(reading.weighting, spectrum) -
		context.gainInForce(reading, source) -
		context.masterOf(reading)
	);
}

function wrongWeighting(profile: Profile, reading: MeterReading, source: string): TypedFinding[] {
	const subs = new Set(subsOf(profile).map(({id}) => id));
	if (reading.weighting !== 'A' || !source.split('+').every(id => subs.has(id))) return [];
	const lowDb = -weightingOfSpectrum('A', reading.signal ?? usualSubBand);
	return [finding('doubt', 'weighting-a-on-sub', [source], {lowDb})];
}
