import type {LengthUnit} from '../../profile/types.ts';
import {formatNumber, formatSigned} from '../../profile/units/decimalText.ts';
import {formatLength} from '../../profile/units/length.ts';
import type {Change, LevelChange, MovedChange, TapeChange} from '../../study/comparison/diff/profileDiff.ts';
import {fieldText} from './fieldText.ts';
import {responseText} from './responseText.ts';

const matchedBy = {
	id: 'by its id',
	name: 'by its name',
	place: 'by its place',
	elimination: 'because nothing else is left',
} as const;

/** Readings that the short form shows of one thing that moved. */
const shortReadings = 3;

function tapeText(reading: TapeChange, about: string, unit: LengthUnit): string {
	const other = reading.from === about ? reading.toName : reading.fromName;
	const size = formatLength(Math.abs(reading.change), unit);
	const [before, after] = [formatLength(reading.before.value, unit), formatLength(reading.after.value, unit)];
	const way = reading.change > 0 ? 'farther from' : 'nearer to';
	return `${size} ${way} ${other} (${before} → ${after})`;
}

function endsText(reading: TapeChange, unit: LengthUnit): string {
	const [before, after] = [formatLength(reading.before.value, unit), formatLength(reading.after.value, unit)];
	return `${reading.fromName} to ${reading.toName} ${before} → ${after}`;
}

function movedText({about, name, readings}: MovedChange, unit: LengthUnit, isFull: boolean): string {
	const shown = isFull ? readings : readings.slice(0, shortReadings);
	const texts = shown.map(reading =>
		about === 'room' ? endsText(reading, unit) : tapeText(reading, about, unit),
	);
	const more = readings.length - shown.length;
	return `${name}: ${texts.join('; ')}${more > 0 ? `; and ${more} more` : ''}.`;
}

function levelText(change: LevelChange): string {
	const {before, after, withoutSettings, isScatter} = change;
	const tone = change.toneHertz === undefined ? '' : `, ${formatNumber(change.toneHertz, 0)} Hz`;
	const read = `${change.name} at ${change.seatName}${tone}: ${formatSigned(change.change, 1)} dB (${formatNumber(before.value, 1)} → ${formatNumber(after.value, 1)} dB)`;
	const told =
		withoutSettings === undefined
			? ''
			: `, of it ${formatSigned(withoutSettings, 1)} dB not from trim or volume`;
	const within = isScatter ? '; within the scatter of two readings' : '';
	return `${read}${told}${within}.`;
}

/** A thing's name, with its id where that says more. */
function named({what, about, name}: Extract<Change, {kind: 'added' | 'removed'}>): string {
	if (what === 'output') return `Output ${about}`;
	return what === 'receiver' || what === 'processor' ? name : `${name} (${about})`;
}

/** One change as a sentence, noun first; lengths in the display unit. */
export function changeText(change: Change, unit: LengthUnit, isFull = true): string {
	switch (change.kind) {
		case 'added':
			return `${named(change)} is new.`;
		case 'removed':
			return `${named(change)} is gone.`;
		case 'renamed': {
			const {olderName, older, name, newer, by} = change.match;
			return `${olderName} (${older}) is now ${name} (${newer}), matched ${matchedBy[by]}.`;
		}

		case 'moved':
			return movedText(change, unit, isFull);
		case 'tape read again': {
			const {fromName, toName, before, after} = change.reading;
			const step = {stepMetres: 0.001};
			return `${fromName} to ${toName}: ${formatLength(before.value, unit, step)} → ${formatLength(after.value, unit, step)}, within the tape's uncertainty.`;
		}

		case 'level':
			return levelText(change);
		case 'response':
			return responseText(change);
		case 'replaced':
		case 'stated':
			return `${change.name}: ${change.fields.map(field => fieldText(field, unit)).join('; ')}.`;
		case 'only in one': {
			const what = {tape: 'tape distance', meter: 'level', recording: 'recorded response'}[change.readings];
			return `${change.count} ${what}${change.count === 1 ? '' : 's'} only in the ${change.side} profile.`;
		}
	}
}
