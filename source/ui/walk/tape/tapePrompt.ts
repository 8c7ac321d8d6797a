import {hasLevels, withMoved} from '../../../profile/moved.ts';
import {nameOf} from '../../../profile/names.ts';
import {isPlane} from '../../../profile/planes.ts';
import type {Profile, TapeReading} from '../../../profile/types.ts';
import {formatLength, type LengthChoice} from '../../../profile/units/length.ts';
import {remarkOnTape} from '../../../study/calibration/readings/tapeSanity.ts';
import {asideText, carriedText} from '../carry.ts';
import {lengthUnitOf, unitWords} from '../lengthUnits.ts';
import type {WalkPlace} from '../places.ts';
import type {Prompt, TakenAnswer, Taking} from '../prompt/prompt.ts';
import {sanityOf} from '../prompt/sanity.ts';
import {lastOf, takenFrom} from '../prompt/taken.ts';
import {sayFor} from '../sayFor.ts';
import {readTaped} from './readTaped.ts';

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
	/** How far what the tape touches lies before the end that is meant, such as a box's side, metres: added to what is typed. */
	readonly beforeMetres?: number;
};

/** A question for a length between two ends; every answer is one more tape reading unless it corrects one. */
export function tapePrompt(profile: Profile, asked: TapeQuestion): Prompt<Profile> {
	const {from, to, isRequired = false, beforeMetres = 0, ...rest} = asked;
	const unit = lengthUnitOf(profile);
	const readings = between(profile, from, to);
	return {
		...rest,
		kind: 'reading',
		unit: unitWords[unit],
		isRequired,
		values: readings.map(
			reading =>
				formatLength(reading.metres - beforeMetres, unit) +
				carriedText(profile, reading) +
				asideText(profile, reading),
		),
		...lastOf(readings),
		isAnswered: readings.some(({setAside}) => !setAside),
		take(subject, text, taking) {
			const reading = readTaped(text, unit, beforeMetres > 0);
			const made = (value: LengthChoice): TapeReading => ({
				from,
				to,
				metres: value.metres + beforeMetres,
				takenAt: taking.takenAt,
			});
			const old = correctedOf(subject, from, to, taking);
			if (reading.kind === 'ok' && old && mayHaveMoved(subject, old, reading.metres + beforeMetres))
				return slipOrMove(subject, old, made(reading), [
					formatLength(old.metres - beforeMetres, unit),
					reading.readAs,
				]);
			return takenFrom(
				reading,
				value => withTape(subject, made(value), old),
				value => sanityOf(remarkOnTape(without(subject, old), made(value)), sayFor(subject)),
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

function correctedOf(
	profile: Profile,
	from: string,
	to: string,
	{correcting}: Taking,
): TapeReading | undefined {
	return correcting === undefined ? undefined : between(profile, from, to)[correcting];
}

function withTape(profile: Profile, reading: TapeReading, corrected: TapeReading | undefined): Profile {
	const tape = profile.tape ?? [];
	if (!corrected) return {...profile, tape: [...tape, reading]};
	return {
		...profile,
		tape: tape.map(other => (other === corrected ? {...corrected, ...reading, setAside: undefined} : other)),
	};
}

function without(profile: Profile, corrected: TapeReading | undefined): Profile {
	return corrected ? {...profile, tape: profile.tape?.filter(other => other !== corrected)} : profile;
}

/** Less than this between two lengths is how a tape is held. Common practice, no source. */
const leastMoveMetres = 0.05;

/** What may stand elsewhere now: a speaker or sub whose level was read, at a length that is far from the one before. */
function mayHaveMoved(profile: Profile, old: TapeReading, metres: number): boolean {
	const {seats, channels, subs = []} = profile;
	const id = movableOf(old, seats);
	const isSource = [...channels, ...subs].some(one => one.id === id);
	return isSource && Math.abs(metres - old.metres) >= leastMoveMetres && hasLevels(profile, id);
}

function movableOf({from, to}: TapeReading, seats: Profile['seats']): string {
	return seats.some(({id}) => id === from) || isPlane(from) ? to : from;
}

/** A corrected length says that the first was wrong, or that the thing stands elsewhere; only then is its level void. */
function slipOrMove(
	profile: Profile,
	old: TapeReading,
	reading: TapeReading,
	[before, readAs]: readonly [before: string, now: string],
): TakenAnswer<Profile> {
	const id = movableOf(old, profile.seats);
	const name = nameOf(profile, id);
	return {
		kind: 'ask',
		question: `${name}: ${before} before, now ${readAs}.`,
		choices: [
			{
				label: `${before} was misread, nothing was moved`,
				next: withTape(profile, reading, old),
				said: readAs,
			},
			{
				label: 'It was moved: its level and its proof are read again',
				next: withTape(withMoved(profile, id), reading, undefined),
				said: readAs,
				hint: `What was read of ${name} where it stood is set aside: its level is asked again at Meter.`,
			},
		],
	};
}

function toggled(profile: Profile, reading: TapeReading): Profile {
	const changed = {...reading, setAside: reading.setAside ? undefined : true};
	return {...profile, tape: profile.tape?.map(other => (other === reading ? changed : other))};
}
