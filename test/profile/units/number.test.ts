import {expect, test} from 'vitest';
import {readNumber} from '../../../source/profile/units/number.ts';

const percent = {minimum: 0, maximum: 100, unit: '%'};

test.each(['', '101', '-1', '50 dB', '1e1', '5 5'])(
	'readNumber refuses %j as a percentage in words',
	text => {
		expect(readNumber(text, percent)).toMatchObject({kind: 'no', why: expect.stringMatching(/\.$/)});
	},
);

test('readNumber reads numbers with and without their unit', () => {
	expect(readNumber('45,5 %', percent)).toEqual({kind: 'ok', value: 45.5, readAs: '45.5 %'});
	expect(readNumber('−12', {minimum: -20, maximum: 0})).toMatchObject({
		kind: 'ok',
		value: -12,
		readAs: '−12',
	});
});

test('readNumber refuses a broken number where a count is wanted', () => {
	expect(readNumber('2.5', {minimum: 0, maximum: 8, isWhole: true})).toEqual({
		kind: 'no',
		why: '2.5 is not a whole number.',
	});
});
