import {longestText, plainText} from './quantity.ts';

/** A number with an optional unit, as typed. */
export type Scaled = {readonly value: number; readonly unit: string; readonly numberText: string};

/** What may have been meant, where a reading is asked about. */
export type Ask<Choice> = {
	readonly kind: 'ask';
	readonly question: string;
	readonly choices: readonly Choice[];
};
/** A refusal in words. */
export type No = {readonly kind: 'no'; readonly why: string};

/** A number for people: at most the given decimals, and a true minus sign. */
export function numberText(value: number, decimals = 3): string {
	return String(Number(value.toFixed(decimals))).replace('-', '−');
}

/**
Splits a text into number and unit. A comma is a decimal sign, never thousands.

@param example - What to type instead, for the sentence.
@returns The parts, with the unit in lower case and without spaces, or a refusal in words.
*/
export function readScaled(text: string, example: string): Scaled | No {
	const no = (why: string): No => ({kind: 'no', why});
	if (text.length > longestText) return no('This text is too long for one number.');
	const plain = plainText(text);
	if (plain === '') return no('Nothing was typed.');
	if (!/\d/.test(plain)) return no(`There is no number in this. Type it like ${example}.`);
	if (/\d[.,]\d*[.,]/.test(plain))
		return no('Two decimal signs in one number. A comma is a decimal sign here, never thousands.');
	if (/\d ?e ?[+-]?\d/.test(plain)) return no('Type the number in plain digits, without an exponent.');
	const match = /^([+-]? ?(?:\d+(?:[.,]\d*)?|[.,]\d+)) ?([^\d\s].*)?$/.exec(plain);
	if (!match) return no(`This is not one number. Type it like ${example}.`);
	const numberText = match[1]!.replace(/[ +]/g, '').replace(',', '.');
	return {value: Number(numberText), unit: (match[2] ?? '').replaceAll(' ', ''), numberText};
}

/** A refusal for a unit that the quantity does not have. */
export function unknownUnit(unit: string, example: string): No {
	return {kind: 'no', why: `“${unit}” is not a unit known here. Type it like ${example}.`};
}
