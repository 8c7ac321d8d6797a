import fc from 'fast-check';
import {describe, expect, test} from 'vitest';
import type {LengthUnit} from '../../../source/profile/types.ts';
import {formatLength, readLength, shownStepMetres} from '../../../source/profile/units/length.ts';

const units: readonly LengthUnit[] = ['ft-in', 'ft', 'm', 'cm'];

describe('readLength refuses in words', () => {
	test.each([
		'',
		'   ',
		'-3',
		'− 3 m',
		'NaN',
		'Infinity',
		'1e99',
		'1e3 m',
		"9'4'",
		'9"4"',
		'1,234.5',
		'1.234,5',
		'9 1/0',
		'9 8/4"',
		'abc',
		'9 furlongs',
		'9.5\' 4"',
		'2 m 186 cm',
		'5000 m',
		'9'.repeat(200),
		'1 234 567',
		'\' "',
		'½ ½',
	])('%j', text => {
		for (const unit of units) {
			const reading = readLength(text, unit);
			expect(reading.kind).toBe('no');
			if (reading.kind === 'no') expect(reading.why).toMatch(/^[A-Z0-9].*\.$/s);
		}
	});
});

// The international inch is exactly 25.4 mm, the foot 304.8 mm (yard and pound agreement of 1959): 112.5 in = 2.8575 m.
test.each([
	`9' 4 1/2"`,
	'9ft 4.5in',
	'9-4.5',
	'9 ft 4½',
	'112.5"',
	'9′ 4½″',
	'9’ 4.5”',
	"9' 4 1/2''",
	'9 FT 4 1/2 IN',
	`9'-4 1/2"`,
	'9′4 1⁄2″',
	'9 feet 4,5 inches',
	'112½ in',
	'9-4 1/2',
	`9' 4-1/2"`,
	'9.375 ft',
	'2.8575 m',
	'285,75 cm',
	'2857.5mm',
])('readLength reads %s as 2.8575 m in every display unit', text => {
	for (const unit of units) {
		const reading = readLength(text, unit);
		expect(reading.kind).toBe('ok');
		if (reading.kind === 'ok') expect(reading.metres).toBeCloseTo(2.8575, 10);
	}
});

test.each([
	['2,86', 'm', 2.86],
	['286', 'cm', 2.86],
	['9.5', 'ft', 2.8956],
	['9.5', 'ft-in', 2.8956],
	['30', 'ft-in', 9.144],
	['1,234', 'm', 1.234],
	['⅜"', 'ft-in', 0.009525],
	['1/2', 'ft', 0.1524],
	['.5', 'm', 0.5],
	['0', 'm', 0],
	['2 m 86 cm', 'm', 2.86],
	['286cm', 'm', 2.86],
] as const)('readLength reads %s in %s as %f m', (text, unit, metres) => {
	const reading = readLength(text, unit);
	expect(reading).toMatchObject({kind: 'ok'});
	if (reading.kind === 'ok') expect(reading.metres).toBeCloseTo(metres, 12);
});

describe('readLength asks', () => {
	const metresAsked = (text: string, unit: LengthUnit, limitMetres?: number) => {
		const reading = readLength(text, unit, limitMetres === undefined ? {} : {limitMetres});
		return reading.kind === 'ask'
			? reading.choices.map(({metres}) => Number(metres.toFixed(4)))
			: reading.kind;
	};

	test('whether 112 in feet and inches is inches or centimetres', () =>
		expect(metresAsked('112', 'ft-in')).toEqual([2.8448, 1.12]));
	test('about 12 inches and more after feet', () => expect(metresAsked(`9' 14"`, 'ft-in')).toEqual([3.0988]));
	test('about 30.01 m, not about 30 m', () => {
		expect(metresAsked('30 m', 'm')).toBe('ok');
		expect(metresAsked('30.01 m', 'm')).toEqual([30.01]);
	});
	test('about more than the limit that the room gives', () => {
		expect(metresAsked('12 m', 'm', 14)).toBe('ok');
		expect(metresAsked('15 m', 'm', 14)).toEqual([15]);
		expect(metresAsked('286', 'm', 14)).toEqual([2.86, 0.286, 286]);
	});
	test('whether 9-1/2 has feet in it', () => expect(metresAsked('9-1/2', 'ft-in')).toEqual([2.7559, 0.2413]));
	test('whether 2.86 in centimetres is metres', () =>
		expect(metresAsked('2.86', 'cm')).toEqual([2.86, 0.0286]));
	test('whether two bare numbers are feet and inches, where the tape shows anything else', () => {
		expect(metresAsked('9 4', 'm')).toEqual([2.8448]);
		expect(metresAsked('9 4', 'ft')).toEqual([2.8448]);
	});
	test('about 12 inches and more after a space', () =>
		expect(metresAsked('9 14', 'ft-in')).toEqual([3.0988]));
});

test('readLength says how it read', () => {
	expect(readLength('112.5"', 'ft-in')).toMatchObject({readAs: '112.5″ = 9′ 4 1/2″', stepMetres: 0.00254});
	expect(readLength('286cm', 'm')).toMatchObject({readAs: '286 cm = 2.86 m'});
	expect(readLength('2,86', 'm')).toMatchObject({readAs: '2.86 m', stepMetres: 0.01});
});

test.each([
	[2.8575, 'ft-in', undefined, '9′ 4 1/2″'],
	[3.047, 'ft-in', undefined, '10′ 0″'],
	[0.1016, 'ft-in', undefined, '4″'],
	[0.0127, 'ft-in', undefined, '1/2″'],
	[2.8575, 'ft-in', 0.0254, '9′ 5″'],
	[2.8575, 'ft', undefined, '9.38 ft'],
	[2.8575, 'm', undefined, '2.86 m'],
	[2.8575, 'm', 0.001, '2.857 m'],
	[2.8575, 'cm', undefined, '285.8 cm'],
	[2.8575, 'cm', 0.01, '286 cm'],
	[-0.11, 'cm', 0.01, '−11 cm'],
	[-0.0001, 'm', undefined, '0.00 m'],
	[Number.NaN, 'm', undefined, '–'],
] as const)('formatLength(%f, %s, step %s) gives %s', (metres, unit, stepMetres, text) => {
	expect(formatLength(metres, unit, stepMetres === undefined ? {} : {stepMetres})).toBe(text);
});

test('readLength reads what formatLength shows, within half the shown step', () => {
	fc.assert(
		fc.property(fc.double({min: 0, max: 29.9, noNaN: true}), fc.constantFrom(...units), (metres, unit) => {
			const reading = readLength(formatLength(metres, unit), unit);
			expect(reading.kind).toBe('ok');
			if (reading.kind === 'ok')
				expect(Math.abs(reading.metres - metres)).toBeLessThanOrEqual(shownStepMetres(unit) / 2 + 1e-9);
		}),
		{seed: 1, numRuns: 2000},
	);
});

test('readLength never throws, and gives finite lengths only', () => {
	const pieces = fc.array(
		fc.constantFrom(
			'9',
			'4',
			'12',
			'0',
			'1/2',
			'½',
			"'",
			'"',
			'′',
			'″',
			' ',
			'-',
			'.',
			',',
			'm',
			'cm',
			'mm',
			'ft',
			'in',
			'e',
			'/',
			'⁄',
		),
		{maxLength: 9},
	);
	fc.assert(
		fc.property(
			fc.oneof(
				fc.string({unit: 'binary'}),
				pieces.map(parts => parts.join('')),
			),
			fc.constantFrom(...units),
			(text, unit) => {
				const reading = readLength(text, unit);
				const lengths =
					reading.kind === 'ok'
						? [reading.metres]
						: reading.kind === 'ask'
							? reading.choices.map(({metres}) => metres)
							: [];
				for (const metres of lengths) expect(metres >= 0 && metres <= 1000).toBe(true);
				if (reading.kind === 'ask') expect(reading.choices.length).toBeGreaterThan(0);
			},
		),
		{seed: 2, numRuns: 5000},
	);
});

test.each([
	['9 4', 2.8448],
	['9 4.5', 2.8575],
	['9 4 1/2', 2.8575],
	['9 4 1/2"', 2.8575],
])('readLength takes %s as feet and inches where the tape shows them', (text, metres) => {
	const reading = readLength(text, 'ft-in');
	expect(reading.kind === 'ok' && reading.metres).toBeCloseTo(metres, 9);
});
