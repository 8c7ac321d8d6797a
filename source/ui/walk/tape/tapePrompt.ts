import type {Profile, TapeReading} from '../../../profile/types.ts';
import {formatLength, type LengthChoice, readLength} from '../../../profile/units/length.ts';
import {remarkOnTape} from '../../../study/calibration/readings/sanity.ts';
import type {WalkPlace} from '../places.ts';
import type {Prompt, Taking} from '../prompt/prompt.ts';
import {sanityOf} from '../prompt/sanity.ts';
import {lastOf, takenFrom} from '../prompt/taken.ts';
import {sayFor} from '../sayFor.ts';
import {lengthUnitOf, unitWords} from './units.ts';

export type TapeQuestion = {
	readonly id: string;
	readonly stop: WalkPlace;
	readonly from: string;
	readonly to: string;
	readonly question: string;
	readonly about?: string;
	readonly explain: string;
	readonly drawing?: readonly string[];
	readonly caution?: string;
	readonly briefCaution?: string;
	readonly isRequired?: boolean;
	readonly row?: string;
};

/** A question for a length between two ends; every answer is one more tape reading unless it corrects one. */
export function tapePrompt(profile: Profile, asked: TapeQuestion): Prompt<Profile> {
	const {from, to, isRequired = false, ...rest} = asked;
	const unit = lengthUnitOf(profile);
	const readings = between(profile, from, to);
	return {
		...rest,
		kind: 'reading',
		unit: unitWords[unit],
		isRequired,
		values: readings.map(
			({metres, setAside}) => formatLength(metres, unit) + (setAside ? ' (set aside)' : ''),
		),
		...lastOf(readings),
		isAnswered: readings.some(({setAside}) => !setAside),
		take(subject, text, taking) {
			const reading = readLength(text, unit);
			const made = (value: LengthChoice): TapeReading => ({
				from,
				to,
				metres: value.metres,
				takenAt: taking.takenAt,
			});
			return takenFrom(
				reading,
				value => withTape(subject, made(value), taking),
				value =>
					sanityOf(remarkOnTape(withoutCorrected(subject, from, to, taking), made(value)), sayFor(subject)),
			);
		},
		setAside: (subject, index) => toggled(subject, between(subject, from, to)[index]!),
	};
}

function between(profile: Profile, from: string, to: string): TapeReading[] {
	return (profile.tape ?? []).filter(
		reading => (reading.from === from && reading.to === to) || (reading.from === to && reading.to === from),
	);
}

function withTape(profile: Profile, reading: TapeReading, {correcting}: Taking): Profile {
	const tape = profile.tape ?? [];
	const corrected =
		correcting === undefined ? undefined : between(profile, reading.from, reading.to)[correcting];
	if (!corrected) return {...profile, tape: [...tape, reading]};
	return {
		...profile,
		tape: tape.map(other => (other === corrected ? {...corrected, ...reading, setAside: undefined} : other)),
	};
}

function withoutCorrected(profile: Profile, from: string, to: string, {correcting}: Taking): Profile {
	const corrected = correcting === undefined ? undefined : between(profile, from, to)[correcting];
	return corrected ? {...profile, tape: profile.tape?.filter(other => other !== corrected)} : profile;
}

function toggled(profile: Profile, reading: TapeReading): Profile {
	const changed = {...reading, setAside: reading.setAside ? undefined : true};
	return {...profile, tape: profile.tape?.map(other => (other === reading ? changed : other))};
}
