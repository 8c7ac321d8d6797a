const vulgarFractions: Readonly<Record<string, string>> = {
	'½': '1/2',
	'¼': '1/4',
	'¾': '3/4',
	'⅛': '1/8',
	'⅜': '3/8',
	'⅝': '5/8',
	'⅞': '7/8',
	'⅓': '1/3',
	'⅔': '2/3',
	'⅕': '1/5',
	'⅙': '1/6',
};

/** Longest text that is looked at; nobody types a reading of a hundred characters. */
export const longestText = 100;

/**
Text of a reading in one spelling: lower case, plain quotes for primes, plain slash, dash and space, vulgar
fractions written out and kept apart from the digit before them.
*/
export function plainText(text: string): string {
	return text
		.replace(/[½¼¾⅛⅜⅝⅞⅓⅔⅕⅙]/g, sign => ` ${vulgarFractions[sign]!}`)
		.replace(/[″“”„ʺ〃＂]/g, '"')
		.replace(/[′’‘‛ʹ´`＇]/g, "'")
		.normalize('NFKC')
		.replace(/''/g, '"')
		.replace(/[⁄∕]/g, '/')
		.replace(/[−–—‐‑]/g, '-')
		.replace(/\s+/g, ' ')
		.trim()
		.toLowerCase();
}

/** A number as typed: its value and the size of its last digit or of its fraction. */
export type Quantity = {readonly value: number; readonly step: number; readonly hasDecimals: boolean};

/**
Pattern of a number: decimal with point or comma, whole number with fraction, or a fraction alone. A stroke with a blank on
one side only is none: in `3 /4` the upper number may be missing.
*/
export const quantityPattern = String.raw`(?:\d+(?: ?- ?| )\d+(?: / |/)\d+|\d+(?: / |/)\d+|\d+(?:[.,]\d*)?|[.,]\d+)`;

/**
Value of a text that matches {@link quantityPattern}.

@returns Undefined for a fraction over zero, or one with a top that is not smaller than its bottom after a whole number.
*/
export function quantityOf(text: string): Quantity | undefined {
	const fraction = /^(?:(\d+)(?: ?- ?| ))?(\d+)(?: \/ |\/)(\d+)$/.exec(text);
	if (fraction) {
		const whole = Number(fraction[1] ?? 0);
		const top = Number(fraction[2]);
		const bottom = Number(fraction[3]);
		if (bottom === 0 || bottom > 128 || (fraction[1] !== undefined && top >= bottom)) return undefined;
		return {value: whole + top / bottom, step: 1 / bottom, hasDecimals: false};
	}

	const decimals = /[.,](\d*)$/.exec(text)?.[1]?.length ?? 0;
	return {value: Number(text.replace(',', '.')), step: 10 ** -decimals, hasDecimals: decimals > 0};
}
