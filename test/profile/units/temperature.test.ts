import {expect, test} from 'vitest';
import {readTemperature} from '../../../source/profile/units/temperature.ts';

test.each(['', 'warm', '20 K', '300 C', '-40 F', '60 C'])('readTemperature refuses %j in words', text => {
	expect(readTemperature(text)).toMatchObject({kind: 'no', why: expect.stringMatching(/\.$/)});
});

// 68 °F = 20 °C by definition of the scale: (68 − 32) / 1.8.
test.each([
	['20', 20],
	['20.5 °C', 20.5],
	['20,5C', 20.5],
	['68 F', 20],
	['68°F', 20],
	['-5', -5],
	['32 fahrenheit', 0],
])('readTemperature reads %s as %f °C', (text, celsius) => {
	expect(readTemperature(text)).toMatchObject({kind: 'ok', celsius});
});

test('readTemperature asks whether a bare 68 is in °F', () => {
	expect(readTemperature('68')).toMatchObject({
		kind: 'ask',
		choices: [{celsius: 20, readAs: '68 °F = 20 °C'}],
	});
	expect(readTemperature('68', 'F')).toMatchObject({kind: 'ok', celsius: 20});
});
