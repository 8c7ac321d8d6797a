import {expect, test} from 'vitest';
import {decimalsOf, formatNumber, formatSigned} from '../../../source/profile/units/decimalText.ts';

test('formatNumber writes no minus before what rounds to zero', () => {
	expect([formatNumber(-0, 1), formatNumber(-0.04, 1), formatNumber(-0.4, 0)]).toEqual(['0.0', '0.0', '0']);
});

test('formatNumber and formatSigned round to the decimals asked for', () => {
	expect(formatNumber(-3.26, 1)).toBe('−3.3');
	expect(formatSigned(0.04, 1)).toBe('0.0');
	expect(formatSigned(3.26, 1)).toBe('+3.3');
});

test('decimalsOf finds the decimals of a step, at most three', () => {
	expect([decimalsOf(1, 0), decimalsOf(0.5), decimalsOf(0.1 + 0.2), decimalsOf(1 / 3)]).toEqual([0, 1, 1, 3]);
});
