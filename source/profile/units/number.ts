import {type No, numberText, readScaled} from './scaled.ts';

export type NumberReading = {readonly kind: 'ok'; readonly value: number; readonly readAs: string} | No;

/** What a plain number may be, and its unit (empty for a count or a ratio). */
export type NumberLimits = {
	readonly minimum: number;
	readonly maximum: number;
	readonly unit?: string;
	readonly isWhole?: boolean;
};

/**
Reads a plain number with point or comma, with its unit or without.

@returns `ok` within the limits, both included, else a sentence that names them. Never throws.
*/
export function readNumber(
	text: string,
	{minimum, maximum, unit = '', isWhole = false}: NumberLimits,
): NumberReading {
	const withUnit = (value: number) => `${numberText(value)}${unit === '' ? '' : ` ${unit}`}`;
	const scaled = readScaled(text, withUnit(minimum > 0 ? minimum : Math.min(maximum, 1)));
	if ('kind' in scaled) return scaled;
	const hasOtherUnit = scaled.unit !== '' && scaled.unit !== unit.toLowerCase().replaceAll(' ', '');
	if (hasOtherUnit)
		return {
			kind: 'no',
			why: `“${scaled.unit}” does not belong here. Type ${unit === '' ? 'the number alone' : `a value in ${unit}`}.`,
		};
	if (isWhole && !Number.isInteger(scaled.value))
		return {kind: 'no', why: `${withUnit(scaled.value)} is not a whole number.`};
	if (scaled.value < minimum || scaled.value > maximum) {
		return {
			kind: 'no',
			why: `${withUnit(scaled.value)} is outside ${numberText(minimum)} to ${withUnit(maximum)}.`,
		};
	}

	return {kind: 'ok', value: scaled.value, readAs: withUnit(scaled.value)};
}
