import {settingsInForce} from '../../../profile/ask/settings.ts';
import type {Profile} from '../../../profile/types.ts';
import {withoutBackground} from '../../../science/acoustics/background.ts';
import {weightingDb} from '../../../science/acoustics/weighting.ts';
import {backgroundAt} from '../levels/backgroundAt.ts';
import type {Remark} from '../result.ts';
import {inDb, remark} from '../words.ts';
import {type Sounding, sounding} from './groups.ts';
import type {StandingSet} from './standing.ts';

/** One tone reading made ready: what sounded, level without weighting and background. */
export type ToneReading = {
	readonly index: number;
	readonly hertz: number;
	readonly sounding: Sounding;
	readonly decibels: number;
	readonly sigmaFactor: number;
	readonly addedMs: number;
	readonly set: StandingSet | undefined;
};

/** All tone readings of the first round at a seat that can be used, and why others cannot. */
export function toneReadings(profile: Profile, seat: string, remarks: Remark[]): ToneReading[] {
	// Looked up once for each weighting: there may be a hundred thousand readings.
	const backgrounds = new Map(
		(['A', 'C', 'Z'] as const).map(weighting => [weighting, backgroundAt(profile, seat, weighting)]),
	);
	return (profile.meter ?? []).flatMap((reading, index): ToneReading[] => {
		const {signal, source, weighting} = reading;
		if (
			reading.setAside ||
			reading.invertedSources?.length ||
			reading.seat !== seat ||
			signal?.kind !== 'tone'
		)
			return [];
		// The second round proves the settings; if it decided them too, it would always be met.
		if (reading.round === 'proof') return [];
		const found = sounding(profile, source);
		if (!found) return [];
		const background = backgrounds.get(weighting);
		const cleaned = background === undefined ? undefined : withoutBackground(reading.decibels, background);
		if (cleaned?.verdict === 'refused') {
			remarks.push(
				remark(
					'doubt',
					'tone-in-background',
					`Meter reading ${index + 1}: the ${signal.hertz} Hz tone reads ${inDb(reading.decibels)}, hardly above the background of ${inDb(background!)}. It was left out; play the tone louder.`,
				),
			);
			return [];
		}

		return [
			{
				index,
				hertz: signal.hertz,
				sounding: found,
				decibels: (cleaned?.levelDb ?? reading.decibels) - weightingDb(weighting, signal.hertz),
				sigmaFactor: cleaned?.sigmaFactor ?? 1,
				addedMs: reading.addedDelayMs ?? 0,
				set: settingsInForce(profile, reading),
			},
		];
	});
}
