import {remarkOnMeter} from '../../../calibration/sanity.ts';
import type {MeterReading, Profile, Signal} from '../../../profile/types.ts';
import {readLevel} from '../../../profile/units/level.ts';
import type {Prompt, Taking} from '../prompt/prompt.ts';
import {sanityOf} from '../prompt/sanity.ts';
import {takenFrom} from '../prompt/taken.ts';

export type MeterQuestion = {
	readonly id: string;
	/** A channel, a sub, several at once, or `background`. */
	readonly source: string | readonly string[];
	readonly seat: string;
	readonly signal?: Signal;
	readonly question: string;
	readonly about?: string;
	readonly explain: string;
	readonly drawing?: readonly string[];
	readonly caution?: string;
	readonly isRequired?: boolean;
	readonly row?: string;
};

/** Weighting that the meter stands at; C where the profile says nothing. */
export function weightingOf(profile: Profile): MeterReading['weighting'] {
	return profile.kit?.meterWeighting ?? 'C';
}

/** A question for a level; every answer is one more meter reading of the first round unless it corrects one. */
export function meterPrompt(profile: Profile, asked: MeterQuestion): Prompt<Profile> {
	const {source, seat, signal, isRequired = false, ...rest} = asked;
	const readings = readingsOf(profile, source, seat);
	return {
		...rest,
		stop: 'meter',
		kind: 'reading',
		unit: `dB ${weightingOf(profile)}`,
		isRequired,
		values: readings.map(({decibels, setAside}) => `${decibels.toFixed(1)}${setAside ? ' (set aside)' : ''}`),
		isAnswered: readings.some(({setAside}) => !setAside),
		take(subject, text, taking) {
			const reading = readLevel(text);
			const made = (value: {readonly decibels: number}): MeterReading => ({
				source: typeof source === 'string' ? source : [...source],
				seat,
				decibels: value.decibels,
				weighting: ('weighting' in reading && reading.weighting) || weightingOf(subject),
				...(signal ? {signal} : {}),
				round: 'first',
				...inForceNow(subject, source),
				takenAt: taking.takenAt,
			});
			return takenFrom(
				reading,
				value => withReading(subject, made(value), taking),
				value => sanityOf(remarkOnMeter(withoutCorrected(subject, made(value), taking), made(value))),
			);
		},
		setAside: (subject, index) => toggled(subject, readingsOf(subject, source, seat)[index]!),
	};
}

/** The set that stood before the round, if it was told; background noise has none. */
function inForceNow(profile: Profile, source: string | readonly string[]): Pick<MeterReading, 'inForce'> {
	const found = foundSet(profile);
	return found && source !== 'background' ? {inForce: found.id} : {};
}

/** The latest set that was told to stand while the first round is metered. */
export function foundSet(profile: Profile) {
	return profile.settings?.findLast(({id}) => /^found\d*$/.test(id));
}

function readingsOf(profile: Profile, source: string | readonly string[], seat: string): MeterReading[] {
	const key = keyOf(source);
	return (profile.meter ?? []).filter(
		reading =>
			reading.round === 'first' &&
			reading.seat === seat &&
			reading.signal?.kind !== 'tone' &&
			reading.addedDelayMs === undefined &&
			keyOf(reading.source) === key,
	);
}

function keyOf(source: string | readonly string[]): string {
	return typeof source === 'string' ? source : source.toSorted().join('+');
}

function correctedBy(
	profile: Profile,
	reading: MeterReading,
	{correcting}: Taking,
): MeterReading | undefined {
	return correcting === undefined ? undefined : readingsOf(profile, reading.source, reading.seat)[correcting];
}

function withReading(profile: Profile, reading: MeterReading, taking: Taking): Profile {
	const meter = profile.meter ?? [];
	const corrected = correctedBy(profile, reading, taking);
	if (!corrected) return {...profile, meter: [...meter, reading]};
	const instead = {...corrected, ...reading, setAside: undefined};
	return {...profile, meter: meter.map(other => (other === corrected ? instead : other))};
}

function withoutCorrected(profile: Profile, reading: MeterReading, taking: Taking): Profile {
	const corrected = correctedBy(profile, reading, taking);
	return corrected ? {...profile, meter: profile.meter?.filter(other => other !== corrected)} : profile;
}

function toggled(profile: Profile, reading: MeterReading): Profile {
	const changed = {...reading, setAside: reading.setAside ? undefined : true};
	return {...profile, meter: profile.meter?.map(other => (other === reading ? changed : other))};
}
