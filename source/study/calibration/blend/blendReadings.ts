import {delayedSubs} from '../../../profile/ask/onPurpose.ts';
import {referenceSeat} from '../../../profile/ask/seats.ts';
import {type SetInForce, settingsInForce} from '../../../profile/ask/settings.ts';
import {usualMeterSigmaDb} from '../../../profile/practice.ts';
import type {MeterReading, Profile} from '../../../profile/types.ts';
import {withoutBackground} from '../../../science/acoustics/background.ts';
import {weightingOfSpectrum} from '../../../science/acoustics/band.ts';
import {backgroundAt} from '../levels/backgroundAt.ts';
import {type Sounding, soundings} from './groups.ts';

/** What was changed for one reading: a delay of some subs or all, and their polarity. */
export type ReadingChange = {
	readonly addedMs: number;
	readonly delayed: readonly string[];
	readonly turned: readonly string[];
};

/** A reading of the blend made ready. */
export type BlendReading = {
	/** Place in the profile's list of meter readings. */
	readonly index: number;
	readonly sounding: Sounding;
	readonly signal: NonNullable<MeterReading['signal']>;
	/** Without weighting and background, dB. */
	readonly levelDb: number;
	readonly sigmaDb: number;
	readonly set: SetInForce | undefined;
	/** What was changed for this reading on top of the set. */
	readonly change: ReadingChange;
	readonly isSearch: boolean;
};

/** No meter repeats itself better than this at a seat, dB. */
const leastMeterSigmaDb = 0.02;

/** Standard deviation of one reading of the meter, dB. */
export function meterSigmaDb({kit}: Profile): number {
	return Math.max(leastMeterSigmaDb, kit?.meterSigmaDb ?? usualMeterSigmaDb);
}

/**
The first round's tones, and its noise with something moved or several sounding, at the reference seat.

@returns Those that can be used, in their order, and the places of those that drown in the background, and of tones with
some subs turned and others not.
*/
export function blendReadings(profile: Profile): {
	readonly readings: readonly BlendReading[];
	readonly drowned: readonly number[];
	readonly partly: readonly number[];
} {
	const seat = referenceSeat(profile).id;
	const sounding = soundings(profile);
	const sigmaDb = meterSigmaDb(profile);
	const drowned: number[] = [];
	const partly: number[] = [];
	// Looked up once for each weighting and band: there may be a hundred thousand readings.
	const backgrounds = new Map(
		(['A', 'C', 'Z'] as const).map(weighting => [weighting, backgroundAt(profile, seat, weighting)]),
	);
	const weightings = new Map<string, number>();
	const weightingOf = (weighting: MeterReading['weighting'], signal: BlendReading['signal']) => {
		const key = `${weighting} ${signal.kind === 'tone' ? signal.hertz : `${signal.fromHertz} ${signal.toHertz}`}`;
		const value = weightings.get(key) ?? weightingOfSpectrum(weighting, signal);
		weightings.set(key, value);
		return value;
	};
	const readings = (profile.meter ?? []).flatMap((reading, index): BlendReading[] => {
		const {signal, weighting} = reading;
		// The second round proves the settings; if it decided them too, it would always be met.
		if (reading.setAside || reading.seat !== seat || reading.round === 'proof' || !signal) return [];
		const heard = sounding(reading.source);
		if (!heard || heard.subs.length === 0) return [];
		if (signal.kind === 'pink' && heard.mains.length === 0 && heard.subs.length < 2) return [];
		const turned = sounding(reading.invertedSources ?? [])?.subs ?? [];
		const isPartlyTurned = turned.length > 0 && !heard.subs.every(id => turned.includes(id));
		// Turned one by one the subs stand otherwise to each other: that is not all of them together.
		if (isPartlyTurned && signal.kind === 'tone' && heard.mains.length > 0) {
			partly.push(index);
			return [];
		}

		const background = backgrounds.get(weighting);
		const cleaned = background === undefined ? undefined : withoutBackground(reading.decibels, background);
		if (cleaned?.verdict === 'refused') {
			drowned.push(index);
			return [];
		}

		return [
			{
				index,
				sounding: heard,
				signal,
				levelDb: (cleaned?.levelDb ?? reading.decibels) - weightingOf(weighting, signal),
				sigmaDb: sigmaDb * (cleaned?.sigmaFactor ?? 1),
				set: settingsInForce(profile, reading),
				change: {
					addedMs: reading.addedDelayMs ?? 0,
					delayed: reading.addedDelayMs ? delayedSubs(reading, heard.subs, heard.mains.length > 0) : [],
					turned,
				},
				isSearch: reading.blendPart === 'search',
			},
		];
	});
	return {readings, drowned, partly};
}
