import {listed} from '../../profile/names.ts';
import {formatNumber} from '../../profile/units/decimalText.ts';
import type {NamedReading, ProofFacts, SetControl} from '../../study/calibration/proof/facts.ts';
import type {UnpredictedReason} from '../../study/calibration/proof/planItem.ts';
import {db, ms, signedDb} from './figures.ts';
import type {Say} from './say.ts';
import type {Sentences} from './sentences.ts';

/** A control as a sentence names it. */
function controlName({box, id}: SetControl, say: Say): string {
	if (box === 'all subs') return 'all subs together';
	return box === 'processor' ? `output ${id}` : say.name(id);
}

const boxName = ({box}: SetControl): string => (box === 'processor' ? 'bass processor' : 'receiver');

function levelCheck(control: SetControl, shouldDb: number, say: Say): string {
	return `Look at the level of ${controlName(control, say)} in the ${boxName(control)}: it should read ${signedDb(shouldDb)}.`;
}

const crossoverName = (choice: number | 'full') =>
	choice === 'full' ? 'full range' : `${formatNumber(choice, 0)} Hz`;

/** A few readings by name, the rest counted. */
function readingNames(readings: readonly NamedReading[], say: Say): string {
	const names = readings.slice(0, 4).map(({source, signal}) => {
		const name = listed(source.map(id => say.name(id)));
		return signal.kind === 'tone' ? `${name} at ${formatNumber(signal.hertz, 0)} Hz` : name;
	});
	return listed(readings.length > 4 ? [...names, `${readings.length - 4} more`] : names);
}

const reasons: Readonly<Record<UnpredictedReason, string>> = {
	background: 'since the background would drown them',
	hole: 'since in such a hole the meter’s place decides',
	'weak cross term': 'since how these add up cannot be told from the first round',
	'subs changed': 'since the subs were changed against each other after the first round',
	'settings changed': 'since they were read under other delays, polarities or crossovers',
	'not read alone': 'since each of them was not read alone in the first round',
	'no first round': 'since the first round did not read them',
};

const exampleCheck = (list: ReadonlyArray<{readonly id: string; readonly shouldDb: number}>, say: Say) =>
	`Look at the levels of ${listed(list.map(({id}) => say.name(id)))} in the receiver: they should read ${listed(list.map(({shouldDb}) => signedDb(shouldDb)))}.`;

export const proofSentences: Sentences<ProofFacts> = {
	'slip-sign': ({control, standsDb, shouldDb}, say) => [
		`${control.box === 'processor' ? `output ${control.id}: ` : ''}the sign was turned round, so ${signedDb(standsDb)} stands there instead of ${signedDb(shouldDb)}`,
		levelCheck(control, shouldDb, say),
	],
	'slip-forgotten': ({control, standsDb, shouldDb}, say) => [
		`${control.box === 'processor' ? `output ${control.id}: ` : ''}the entry was forgotten, so ${signedDb(standsDb)} stands there instead of ${signedDb(shouldDb)}`,
		levelCheck(control, shouldDb, say),
	],
	'slip-other-step': ({control, standsDb, shouldDb}, say) => [
		`${control.box === 'processor' ? `output ${control.id}: ` : ''}steps were counted as decibels or the other way round, so ${signedDb(standsDb)} stands there instead of ${signedDb(shouldDb)}`,
		levelCheck(control, shouldDb, say),
	],
	'slip-swapped': ({first, second}, say) => [
		'each has the other’s level',
		`Look at both in the ${boxName(first)}: ${controlName(first, say)} should read ${signedDb(first.shouldDb)}, ${controlName(second, say)} ${signedDb(second.shouldDb)}.`,
	],
	'slip-all-signs': ({examples: list}, say) => [
		'all levels were typed in with the sign turned round',
		exampleCheck(list, say),
	],
	'slip-all-forgotten': ({examples: list}, say) => [
		'the receiver still holds the levels from before; the new ones were not stored',
		exampleCheck(list, say),
	],
	'slip-polarity': ({control}, say) => [
		`${controlName(control, say)}: inverted, in a box, at a switch of the sub or in a cable`,
		`Invert ${controlName(control, say)} and read both together again: the level should come to the one predicted.`,
	],
	'slip-sub-delay-forgotten': ({control, offMs}, say) => [
		`${controlName(control, say)}: the delay was not changed; it is off by ${ms(offMs)}`,
		`Look at the delay or distance of ${controlName(control, say)}: it should be the new one.`,
	],
	'slip-sub-delay': ({control, offMs}, say) => [
		`${controlName(control, say)}: the delay is off by about ${ms(offMs)}`,
		`Look at the delay or distance of ${controlName(control, say)}, then read the tones again, at three frequencies at least.`,
	],
	'slip-crossover': ({stands, should}) => [
		`the crossover stands at ${crossoverName(stands)} instead of ${crossoverName(should)}`,
		`Look at it in the receiver: it should be ${crossoverName(should)}.`,
	],
	'slip-unexplained': ({offDb}) => [
		`${signedDb(offDb)} that no entry explains`,
		'Read it once more with the meter where it stood in the first round; look for a turned knob, a cover or a loose plug.',
	],
	'proof-settings-missing': () => [
		'the profile stores no settings, so there is nothing to prove',
		'Dial in and keep the settings first.',
	],
	'proof-first-round-missing': () => [
		'the first round holds no level to forecast from',
		'Read every channel at the seat first.',
	],
	'proof-second-round-missing': ({count, set}) => [
		'no reading of the second round yet',
		`Take ${count === 1 ? 'it' : `all ${count}`} with the settings “${set}” in force.`,
	],
	'proof-settings-stale': () => [
		'readings or gear changed after these settings were computed',
		'Solve again, or the proof is that of old settings.',
	],
	'proof-master-moved': ({shiftDb}) => [
		`the speakers are ${db(Math.abs(shiftDb))} ${shiftDb > 0 ? 'louder' : 'softer'} than predicted in common: the master volume stands elsewhere than in the first round, or than its settings say`,
		'This was taken out first.',
	],
	'proof-look-again': ({readings}, say) => [
		`not clear yet: ${readingNames(readings, say)}`,
		'Put the meter down anew and read again; the mean of up to four looks decides.',
	],
	'proof-left-out': ({readings}, say) => [`not read in the second round: ${readingNames(readings, say)}`],
	'proof-unjudged': ({readings, reason}, say) => [
		`not judged: ${readingNames(readings, say)}, ${reasons[reason]}`,
	],
	'proof-assumption': ({assumption}) => [
		assumption === 'in-phase'
			? 'the subs were not read together as they are meant to stand; they count as adding up in phase'
			: 'several subs count as one source at a tone, changed alike',
	],
	'proof-not-found-by-meter': () => [
		'most slips of 1 to 1.5 dB and most wrong crossovers cannot be found with a meter',
	],
};
