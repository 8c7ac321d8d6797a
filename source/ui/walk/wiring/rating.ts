import type {Reading} from '../prompt/taken.ts';

export type Rating = {
	readonly volts?: number;
	readonly limitAmperes?: number;
	readonly limitWatts?: number;
	readonly limitVoltAmperes?: number;
};
export type RatingReading = {readonly rating: Rating; readonly readAs: string};

const fields = {
	a: {field: 'limitAmperes', unit: 'A', most: 1000},
	v: {field: 'volts', unit: 'V', most: 1000},
	w: {field: 'limitWatts', unit: 'W', most: 100_000},
	va: {field: 'limitVoltAmperes', unit: 'VA', most: 100_000},
} as const;

const quantity = /(\d+(?:[.,]\d+)?)\s*(va|v|a|w)?/g;
const example = 'Type it like 10 A, 10 A 230 V, 2300 W or 1500 VA.';

/** Reads what is printed on a strip or uninterruptible supply: amperes, watts or volt-amperes, and the voltage. A bare number is in amperes. */
export function readRating(text: string): Reading<RatingReading> {
	const plain = text.toLowerCase();
	const found = [...plain.matchAll(quantity)];
	if (found.length === 0 || /[^\s,]/.test(plain.replace(quantity, '')))
		return {kind: 'no', why: `This is no rating. ${example}`};
	const rating: {-readonly [Field in keyof Rating]: number} = {};
	const said: string[] = [];
	for (const [, digits, sign = 'a'] of found) {
		const {field, unit, most} = fields[sign as keyof typeof fields];
		const value = Number(digits!.replace(',', '.'));
		if (!(value > 0 && value <= most)) return {kind: 'no', why: `${unit} lie above 0 and up to ${most}.`};
		if (rating[field] !== undefined) return {kind: 'no', why: `${unit} stand there twice. ${example}`};
		rating[field] = value;
		said.push(`${value} ${unit}`);
	}

	const {volts, ...limits} = rating;
	if (Object.keys(limits).length === 0) return {kind: 'no', why: `Volts alone are no limit. ${example}`};
	return {kind: 'ok', rating, readAs: said.join(', ')};
}

/** The same in words, from what is kept. */
export function ratingText(rating: Rating): string | undefined {
	const parts = [fields.a, fields.w, fields.va].flatMap(({field, unit}) =>
		rating[field] === undefined ? [] : [`${rating[field]} ${unit}`],
	);
	return parts.length === 0 ? undefined : [...parts, `${rating.volts} V`].join(', ');
}
