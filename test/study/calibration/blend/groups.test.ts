import {expect, test} from 'vitest';
import type {Profile} from '../../../../source/profile/types.ts';
import {soundings} from '../../../../source/study/calibration/blend/groups.ts';

const sounding = soundings({
	channels: [{id: 'FL'}, {id: 'FR'}, {id: 'LFE1'}, {id: 'LFE2'}],
	subs: [
		{id: 'sub1', name: 'One', fedBy: 'LFE1'},
		{id: 'sub2', name: 'Two', fedBy: 'LFE1'},
	],
} as unknown as Profile);

test('what sounds is unknown for a source that the profile does not hold', () => {
	expect(sounding('FC')).toBeUndefined();
	expect(sounding(['FL', 'background'])).toBeUndefined();
});

test('an LFE channel stands for every sub that it feeds, and sources come in the order of the profile', () => {
	expect(sounding(['sub2', 'FR', 'FL'])).toEqual({mains: ['FL', 'FR'], subs: ['sub2']});
	expect(sounding(['FL', 'LFE1'])).toEqual({mains: ['FL'], subs: ['sub1', 'sub2']});
});

test('an LFE channel without a named sub is a sub of its own', () => {
	expect(sounding('LFE2')).toEqual({mains: [], subs: ['LFE2']});
});
