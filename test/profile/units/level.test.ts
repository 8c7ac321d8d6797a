import fc from 'fast-check';
import {expect, test} from 'vitest';
import {readLevel} from '../../../source/profile/units/level.ts';

test.each(['', 'NaN', '-5', '1e99', '74.2.1', '74 m', 'dB', '99999', '74 75', '74.2 dBA dB'])(
	'readLevel refuses %j in words',
	text => {
		const reading = readLevel(text);
		expect(reading.kind).toBe('no');
		if (reading.kind === 'no') expect(reading.why).toMatch(/^[A-Z0-9“].*\.$/);
	},
);

test.each([
	['74.2', undefined, '74.2 dB'],
	['74,2', undefined, '74.2 dB'],
	['74.2 dB', undefined, '74.2 dB'],
	['74.2 dBC', 'C', '74.2 dB C'],
	['74.2dB(A)', 'A', '74.2 dB A'],
	['74.2 dB SPL', undefined, '74.2 dB'],
	['74.2 dBZ', 'Z', '74.2 dB Z'],
])('readLevel reads %s', (text, weighting, readAs) => {
	const reading = readLevel(text);
	expect(reading).toMatchObject({kind: 'ok', decibels: 74.2, readAs});
	expect(reading.kind === 'ok' && reading.weighting).toBe(weighting);
});

test.each([
	['7.42', 74.2],
	['742', 74.2],
	['7420', 74.2],
	['12', 120],
])('readLevel asks whether %s lost its decimal sign', (text, meant) => {
	const reading = readLevel(text);
	expect(reading.kind).toBe('ask');
	if (reading.kind === 'ask') {
		expect(reading.choices[0]!.decibels).toBe(meant);
		expect(reading.question).toBe(`Did you mean ${meant}?`);
	}
});

test('readLevel cautions about ears above 100 dB, not at 100 dB', () => {
	expect(readLevel('100')).not.toHaveProperty('caution');
	expect(readLevel('100.1')).toHaveProperty('caution');
	expect(readLevel('130')).toMatchObject({
		kind: 'ask',
		choices: [{decibels: 130}],
		caution: expect.stringMatching('ears'),
	});
});

test('readLevel never throws, and takes 20 to 120 dB only', () => {
	fc.assert(
		fc.property(fc.oneof(fc.string({unit: 'binary'}), fc.double().map(String)), text => {
			const reading = readLevel(text);
			if (reading.kind === 'ok') expect(reading.decibels >= 20 && reading.decibels <= 120).toBe(true);
		}),
		{seed: 3, numRuns: 3000},
	);
});
