import type {MeterReading, Profile} from '../../../profile/types.ts';
import {readLevel} from '../../../profile/units/level.ts';
import {remarkOnMeter} from '../../../study/calibration/readings/meterSanity.ts';
import {asideText, carriedText} from '../carry.ts';
import type {Prompt, Taking} from '../prompt/prompt.ts';
import {sanityOf} from '../prompt/sanity.ts';
import {lastOf, takenFrom} from '../prompt/taken.ts';
import {sayFor} from '../sayFor.ts';

/** Weighting that the meter stands at; C where the profile says nothing. */
export function weightingOf(profile: Profile): MeterReading['weighting'] {
	return profile.kit?.meterWeighting ?? 'C';
}

export type LevelQuestion = Pick<
	Prompt<Profile>,
	'id' | 'stop' | 'question' | 'about' | 'explain' | 'drawing' | 'caution' | 'briefCaution' | 'row'
> & {
	readonly isRequired?: boolean;
	/** Weighting that this reading needs, where it is not the usual one of the kit. */
	readonly weighting?: MeterReading['weighting'];
	/** Whether a reading of the profile answers this question. */
	readonly isOwn: (reading: MeterReading) => boolean;
	/** A reading as this question takes it; level, weighting and time are added. */
	readonly made: (
		profile: Profile,
	) => Pick<
		MeterReading,
		| 'source'
		| 'seat'
		| 'point'
		| 'signal'
		| 'round'
		| 'inForce'
		| 'addedDelayMs'
		| 'addedDelaySources'
		| 'invertedSources'
		| 'blendPart'
	>;
	/** Words on the answer, from the profile that holds it. */
	readonly hint?: (after: Profile) => string | undefined;
};

/** A question for a level; every answer is one more meter reading unless it corrects one. */
export function levelPrompt(profile: Profile, asked: LevelQuestion): Prompt<Profile> {
	const {isOwn, made, hint, isRequired = false, weighting = weightingOf(profile), ...words} = asked;
	const ownOf = (subject: Profile) => (subject.meter ?? []).filter(isOwn);
	const readings = ownOf(profile);
	return {
		...words,
		kind: 'reading',
		unit: `dB ${weighting}`,
		isRequired,
		values: readings.map(
			reading => reading.decibels.toFixed(1) + carriedText(profile, reading) + asideText(profile, reading),
		),
		...lastOf(readings),
		isAnswered: readings.some(({setAside}) => !setAside),
		take(subject, text, taking) {
			const level = readLevel(text);
			const corrected = correctedOf(ownOf(subject), taking);
			const reading = (decibels: number): MeterReading => ({
				...made(subject),
				decibels,
				weighting: ('weighting' in level && level.weighting) || weighting,
				takenAt: taking.takenAt,
			});
			const after = (decibels: number) => withLevel(subject, reading(decibels), corrected);
			return takenFrom(
				level,
				({decibels}) => after(decibels),
				({decibels}) => {
					const sanity = sanityOf(
						remarkOnMeter(without(subject, corrected), reading(decibels)),
						sayFor(subject),
					);
					return {...sanity, hint: hint?.(after(decibels)) ?? sanity.hint};
				},
			);
		},
		setAside: (subject, index) => toggled(subject, ownOf(subject)[index]!),
	};
}

function correctedOf(own: readonly MeterReading[], {correcting}: Taking): MeterReading | undefined {
	return correcting === undefined ? undefined : own[correcting];
}

function withLevel(profile: Profile, reading: MeterReading, corrected: MeterReading | undefined): Profile {
	const meter = profile.meter ?? [];
	if (!corrected) return {...profile, meter: [...meter, reading]};
	const instead = {...corrected, ...reading, setAside: undefined};
	return {...profile, meter: meter.map(other => (other === corrected ? instead : other))};
}

function without(profile: Profile, corrected: MeterReading | undefined): Profile {
	return corrected ? {...profile, meter: profile.meter?.filter(other => other !== corrected)} : profile;
}

function toggled(profile: Profile, reading: MeterReading): Profile {
	const changed = {...reading, setAside: reading.setAside ? undefined : true};
	return {...profile, meter: profile.meter?.map(other => (other === reading ? changed : other))};
}
