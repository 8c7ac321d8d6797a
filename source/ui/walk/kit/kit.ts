import type {Kit, Profile, Weighting} from '../../../profile/types.ts';
import {formatLength, type LengthChoice, readLength} from '../../../profile/units/length.ts';
import {readNumber} from '../../../profile/units/number.ts';
import {lengthUnitOf, unitWords} from '../lengthUnits.ts';
import type {Prompt} from '../prompt/prompt.ts';
import {choicePrompt, valuePrompt} from '../prompt/single.ts';
import type {Stop} from '../stop.ts';
import {tapeMarkPrompt, wirePrompt} from './marks.ts';
import {processorPrompts} from './processor.ts';
import {receiverPrompts} from './receiver.ts';
import {limitAndBoxPrompts, speakerPrompts} from './speakers.ts';
import {subPrompts} from './subs.ts';

/**
Questions about speakers, receiver, processor, meter, tape and subs, first what changes a setting most. The usual stands where
nothing is typed.
*/
export function kitPrompts(profile: Profile): Prompt<Profile>[] {
	return [
		...limitAndBoxPrompts(profile),
		...receiverPrompts(profile),
		...processorPrompts(profile),
		weightingPrompt(profile),
		meterOffsetPrompt(profile),
		tapeMarkPrompt(profile),
		tapeStepPrompt(profile),
		wirePrompt(profile),
		...speakerPrompts(profile),
		...subPrompts(profile),
	];
}

function withKit(profile: Profile, change: Partial<Kit>): Profile {
	return {...profile, kit: {...profile.kit, ...change}};
}

const weightings: ReadonlyArray<readonly [Weighting, string, string]> = [
	['C', 'C', 'the one for this job'],
	['Z', 'Z, flat', 'as good as C'],
	['A', 'A', 'reads subs some 24 dB low'],
];

function weightingPrompt(profile: Profile): Prompt<Profile> {
	const now = weightings.findIndex(([weighting]) => weighting === profile.kit?.meterWeighting);
	return choicePrompt<Profile>({
		id: 'kit:weighting',
		stop: 'kit',
		question: 'Weighting of the meter',
		about: 'The switch or menu marked A, C or Z.',
		explain:
			'C leaves the bass nearly alone; A takes most of it away. The readings are corrected either way.',
		chosen: now < 0 ? undefined : now,
		usual: 0,
		offers: weightings.map(([meterWeighting, label, hint]) => ({
			label,
			hint,
			put: subject => withKit(subject, {meterWeighting}),
		})),
	});
}

function meterOffsetPrompt(profile: Profile): Prompt<Profile> {
	const offset = profile.kit?.meterOffsetDb;
	return valuePrompt<Profile, {value: number; readAs: string}>({
		id: 'kit:meterOffset',
		stop: 'kit',
		question: 'Correction of the meter',
		about: 'Added to every reading. From a calibrator: 94.0 less what it showed.',
		explain: 'It moves all channels alike, so trims between channels do not depend on it.',
		unit: 'dB',
		shown: offset === undefined ? undefined : `${offset} dB`,
		read: text => readNumber(text, {minimum: -20, maximum: 20, unit: 'dB'}),
		put: (subject, {value}) => withKit(subject, {meterOffsetDb: value}),
	});
}

function tapeStepPrompt(profile: Profile): Prompt<Profile> {
	const unit = lengthUnitOf(profile);
	const step = profile.kit?.tapeStepMetres;
	return valuePrompt<Profile, LengthChoice>({
		id: 'kit:tapeStep',
		stop: 'kit',
		question: 'Smallest division read on the tape',
		about: 'A quarter inch is 1/4in; a centimetre is 1cm.',
		explain: 'It says how far two readings may differ without one of them being wrong.',
		unit: unitWords[unit],
		shown: step === undefined ? undefined : formatLength(step, unit, {stepMetres: step}),
		read(text) {
			const reading = readLength(text, unit);
			const isFine = reading.kind !== 'ok' || (reading.metres > 0 && reading.metres <= 1);
			return isFine ? reading : {kind: 'no', why: 'A division is more than nothing and less than a metre.'};
		},
		put: (subject, {metres}) => withKit(subject, {tapeStepMetres: metres}),
	});
}

/** What receiver, processor, meter, tape, speakers and subs can do. */
export const kitDrawer = {id: 'kit', name: 'Kit', prompts: kitPrompts} as const satisfies Stop<never>;
