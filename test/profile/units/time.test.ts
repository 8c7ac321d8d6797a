import fc from 'fast-check';
import {expect, test} from 'vitest';
import {readTime} from '../../../source/profile/units/time.ts';

test.each(['', 'soon', '1e99', '5 m', '1,2,3', '99999999'])('readTime refuses %j in words', text => {
	expect(readTime(text)).toMatchObject({kind: 'no', why: expect.stringMatching(/\.$/)});
});

test.each([
	['5.3', 5.3],
	['5,3 ms', 5.3],
	['5300 µs', 5.3],
	['5300 μs', 5.3],
	['5300us', 5.3],
	['0.0053 s', 5.3],
	['-2', -2],
	['−2 ms', -2],
	['0', 0],
])('readTime reads %s as %f ms', (text, milliseconds) => {
	expect(readTime(text)).toMatchObject({kind: 'ok', milliseconds});
});

test('readTime asks about more than a second', () => {
	expect(readTime('5300')).toMatchObject({kind: 'ask', choices: [{milliseconds: 5.3}, {milliseconds: 5300}]});
});

test('readTime never throws', () => {
	fc.assert(
		fc.property(fc.string({unit: 'binary'}), text => typeof readTime(text).kind === 'string'),
		{seed: 4, numRuns: 2000},
	);
});
