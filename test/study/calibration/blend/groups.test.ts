import {expect, test} from 'vitest';
import type {Profile} from '../../../../source/profile/types.ts';
import {groupsOfBoth, pairId, sounding} from '../../../../source/study/calibration/blend/groups.ts';

const profile = {
	channels: [{id: 'FL'}, {id: 'FR'}, {id: 'LFE1'}, {id: 'LFE2'}],
	subs: [
		{id: 'sub1', name: 'One', fedBy: 'LFE1'},
		{id: 'sub2', name: 'Two', fedBy: 'LFE1'},
	],
} as unknown as Profile;

test('sounding is undefined for a source that the profile does not hold', () => {
	expect(sounding(profile, 'FC')).toBeUndefined();
	expect(sounding(profile, ['FL', 'background'])).toBeUndefined();
});

test('sounding takes an LFE channel for every sub that it feeds, and puts sources in the order of the profile', () => {
	expect(sounding(profile, ['sub2', 'FR', 'FL'])).toEqual({mains: ['FL', 'FR'], subs: ['sub2']});
	expect(sounding(profile, ['FL', 'LFE1'])).toEqual({mains: ['FL'], subs: ['sub1', 'sub2']});
});

test('sounding takes an LFE channel without a named sub for a sub of its own', () => {
	expect(sounding(profile, 'LFE2')).toEqual({mains: [], subs: ['LFE2']});
});

test('groupsOfBoth sees two sides only where two sides sound', () => {
	expect(groupsOfBoth({mains: ['FL'], subs: []})).toBeUndefined();
	expect(groupsOfBoth({mains: [], subs: ['sub1']})).toBeUndefined();
	expect(pairId(groupsOfBoth({mains: ['FL', 'FR'], subs: ['sub1', 'sub2']})!)).toBe('FL+FR|sub1+sub2');
	expect(groupsOfBoth({mains: [], subs: ['sub1', 'sub2', 'sub3']})).toEqual({
		kind: 'subs',
		still: ['sub1', 'sub2'],
		moved: ['sub3'],
	});
});
