import {expect, test} from 'vitest';
import {masterSentence} from '../../source/report/masterSentence.ts';

test('the master volume is told as a change, and as a value only where the value is known', () => {
	expect(masterSentence({})).toBeUndefined();
	expect(masterSentence({masterVolumeTurnDb: 0})).toBe('Master volume: leave it as it is.');
	expect(masterSentence({masterVolumeTurnDb: -3})).toBe('Master volume: turn it down by 3.0 dB.');
	expect(masterSentence({masterVolumeTurnDb: 1.5, masterVolumeDb: -18.5})).toBe(
		'Master volume: turn it up by 1.5 dB, to −18.5 dB.',
	);
});
