import {isForLevels, joinedName, meterSigmaOf, observe, sourceNames} from '../../../profile/ask/readings.ts';
import {subsOf} from '../../../profile/ask/subs.ts';
import {nameOf} from '../../../profile/names.ts';
import {farFromOthersDb, testSignalDb, usualMainsBand, usualSubBand} from '../../../profile/practice.ts';
import type {MeterReading, Profile} from '../../../profile/types.ts';
import {weightingOfSpectrum} from '../../../science/acoustics/band.ts';
import {median} from '../../../science/numeric/statistics.ts';
import {levelContext} from '../levels/levelContext.ts';
import type {LevelContext} from '../levels/levels.ts';
import type {Remark} from '../result.ts';
import {inDb, number, remark} from '../words.ts';

/** From this level on, hours count. @see NIOSH 98-126: 85 dBA over eight hours, halved for every 3 dB. */
const cautionDb = 85;

/**
What strikes at once about a meter reading that was just typed, before it is computed with.

@param reading - May already be in the profile (as the same object) or not.
@returns Most serious first; empty where nothing strikes.
*/
export function remarkOnMeter(profile: Profile, reading: MeterReading): Remark[] {
	const source = sourceNames(profile)(reading.source);
	const name = nameOf(profile, source);
	if (source === 'background') return backgroundRemarks(profile, reading);
	const slip = misplacedPoint(source, name, reading.decibels);
	if (slip) return [slip];
	const remarks: Remark[] = [];
	const near = nearBackground(profile, reading, source, name);
	if (near) remarks.push(near);
	if (isForLevels(reading)) remarks.push(...comparisons(profile, reading, source, name));
	const weighting = wrongWeighting(profile, reading, source, name);
	if (weighting) remarks.push(weighting);
	if (reading.decibels >= cautionDb && reading.decibels <= testSignalDb.most) {
		const hours = 8 * 2 ** ((cautionDb - reading.decibels) / 3);
		const time =
			hours >= 1
				? `${number(hours, hours < 3 ? 1 : 0)} hours`
				: `${number(Math.max(1, hours * 60), 0)} minutes`;
		const text = `${name}: ${inDb(reading.decibels)}. Ears bear this level for about ${time} a day. Turn the noise down between readings, or wear ear protection.`;
		remarks.push(remark('note', 'loud', text, source));
	}

	return remarks;
}

function misplacedPoint(source: string, name: string, decibels: number): Remark | undefined {
	if (decibels >= testSignalDb.least && decibels <= testSignalDb.most) return undefined;
	const meant = [decibels * 10, decibels / 10, decibels / 100, -decibels].find(
		value => value >= 50 && value <= 110,
	);
	const text =
		meant === undefined
			? `${name}: ${inDb(decibels, digits(decibels))} cannot be the level of a test signal. Read the meter again.`
			: `${name}: ${inDb(decibels, digits(decibels))}? You mean ${inDb(meant)}?`;
	return remark('problem', 'level-impossible', text, source);
}

function digits(value: number): number {
	return Number.isInteger(value) ? 0 : Math.min(2, (String(value).split('.')[1] ?? '').length);
}

function backgroundRemarks(profile: Profile, {decibels, seat}: MeterReading): Remark[] {
	if (decibels < 0 || decibels > testSignalDb.most) {
		const text = `Background: ${inDb(decibels)} cannot be. Read the meter again with the noise off.`;
		return [remark('problem', 'level-impossible', text, 'background')];
	}

	if (decibels < 60) return [];
	const text = `Background at ${nameOf(profile, seat)}: ${inDb(decibels)} is loud for a room at rest. Was the test signal still on?`;
	return [remark('doubt', 'background-loud', text, 'background')];
}

function nearBackground(
	profile: Profile,
	reading: MeterReading,
	source: string,
	name: string,
): Remark | undefined {
	const backgrounds = (profile.meter ?? []).filter(
		other =>
			other.source === 'background' &&
			!other.setAside &&
			other.seat === reading.seat &&
			other.weighting === reading.weighting,
	);
	if (backgrounds.length === 0) return undefined;
	const background = median(backgrounds.map(({decibels}) => decibels));
	const above = reading.decibels - background;
	if (above >= 6) return undefined;
	const fate = above <= 3 ? 'Nothing can be told from it' : 'That is unreliable';
	const text = `${name}: ${inDb(reading.decibels)}, only ${inDb(above)} above the background of ${inDb(background)}. ${fate}. Play the signal louder or make the room quieter.`;
	return remark(above <= 3 ? 'problem' : 'doubt', 'background-near', text, source);
}

/** Against the repeats, or, for a first reading, against the other channels; both with the same settings in force. */
function comparisons(profile: Profile, reading: MeterReading, source: string, name: string): Remark[] {
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
	if (own.length > 0) {
		const middle = median(own);
		const difference = level - middle;
		if (Math.abs(difference) <= 2 * Math.SQRT2 * sigma) return [];
		const text = `${name}: ${inDb(reading.decibels)}, ${inDb(Math.abs(difference))} ${difference > 0 ? 'above' : 'below'} its repeat${own.length > 1 ? 's' : ''}. Take it once more with the meter on a stand.`;
		return [remark('doubt', 'level-far-from-repeats', text, source)];
	}

	if (others.length === 0 || source.includes('+')) return [];
	const difference = level - median(others);
	if (Math.abs(difference) <= farFromOthersDb) return [];
	const text = `${name}: ${inDb(reading.decibels)}, ${inDb(Math.abs(difference), 0)} ${difference > 0 ? 'above' : 'below'} the other channel${others.length > 1 ? 's' : ''}. Is the signal on this channel, and at the same master volume? If so, keep it.`;
	return [remark('doubt', 'level-far-from-others', text, source)];
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

function wrongWeighting(
	profile: Profile,
	reading: MeterReading,
	source: string,
	name: string,
): Remark | undefined {
	const subs = new Set(subsOf(profile).map(({id}) => id));
	if (reading.weighting !== 'A' || !source.split('+').every(id => subs.has(id))) return undefined;
	const low = -weightingOfSpectrum('A', reading.signal ?? usualSubBand);
	const text = `${name}: with A weighting the meter reads the sub ${inDb(low)} low and mostly hears something else. Switch the meter to C and read again.`;
	return remark('doubt', 'weighting-a-on-sub', text, source);
}
