import {expect, test} from 'vitest';
import {formatDelay, formatTrim} from '../../source/report/settingText.ts';

test('formatTrim shows zero without a sign, also after rounding away binary dust', () => {
	expect(formatTrim(0)).toBe('0.0');
	expect(formatTrim(-0)).toBe('0.0');
	expect(formatTrim(-1e-12)).toBe('0.0');
});

test('formatTrim shows as many decimals as the step needs, and the true minus sign', () => {
	expect(formatTrim(1.5)).toBe('+1.5');
	expect(formatTrim(-0.5)).toBe('−0.5');
	expect(formatTrim(-0.25)).toBe('−0.25');
	expect(formatTrim(0.1 + 0.2)).toBe('+0.3');
});

test('formatDelay shows a delay with its unit, to the step of the box', () => {
	expect(formatDelay(0)).toBe('0.0 ms');
	expect(formatDelay(12)).toBe('12.0 ms');
	expect(formatDelay(3.14)).toBe('3.14 ms');
});
