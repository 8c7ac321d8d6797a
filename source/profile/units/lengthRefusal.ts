import type {LengthUnit} from './lengthUnit.ts';

/** What to type, for a text that cannot be read. */
export const examples: Readonly<Record<LengthUnit, string>> = {
	'ft-in': '9\' 4 1/2" or 2.86 m',
	ft: '9.38 or 9\' 4 1/2"',
	m: '2.86 or 286 cm',
	cm: '286 or 2.86 m',
};

export const badFraction = 'The fraction cannot be right. Type it like 4 1/2.';

/** A sentence for a text that can be no length at all, whatever the unit. */
export function lengthRefusal(plain: string): string | undefined {
	if (plain === '') return 'Nothing was typed.';
	if (!/\d/.test(plain)) return 'There is no number in this.';
	if (/^-/.test(plain)) return 'A length cannot be negative.';
	if (/\d ?e ?[+-]?\d/.test(plain)) return 'A length is typed in plain digits, without an exponent.';
	if (/\d[.,]\d*[.,]/.test(plain))
		return 'Two decimal signs in one number. A comma is a decimal sign here, never thousands.';
	if ((plain.match(/'/g) ?? []).length > 1) return 'Two foot marks. Inches take two marks (9\' 4").';
	if ((plain.match(/"/g) ?? []).length > 1) return 'Two inch marks. Feet take one mark (9\' 4").';
	return undefined;
}
