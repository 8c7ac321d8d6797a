import {expect, test} from 'vitest';
import {readFrequency} from '../../../source/profile/units/frequency.ts';

test.each(['', '0', '-80', '80 dB', '300 kHz', '1.000,5'])('readFrequency refuses %j in words', text => {
	expect(readFrequency(text)).toMatchObject({kind: 'no', why: expect.stringMatching(/\.$/)});
});

test.each([
	['80', 80],
	['80 Hz', 80],
	['80hz', 80],
	['0.08 kHz', 80],
	['0,08 kHz', 80],
	['1k', 1000],
])('readFrequency reads %s as %f Hz', (text, hertz) => {
	expect(readFrequency(text)).toMatchObject({kind: 'ok', hertz});
});
