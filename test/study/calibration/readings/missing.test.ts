import {expect, test} from 'vitest';
import {observe} from '../../../../source/profile/ask/readings.ts';
import type {Profile} from '../../../../source/profile/types.ts';
import {missingReadings, missingRemarks} from '../../../../source/study/calibration/readings/missing.ts';
import {emptyRoom, level, tape} from '../room.ts';
import {sentence} from '../sentence.ts';

const missing = (profile: Profile, known?: ReadonlyMap<string, unknown>) =>
	missingReadings(profile, observe(profile), known).map(({kind, about, blocks}) => [kind, about, blocks]);

const twoSubs = emptyRoom({
	channels: [{id: 'FL'}, {id: 'LFE1'}],
	subs: [
		{id: 'sub1', name: 'Front sub', fedBy: 'LFE1'},
		{id: 'sub2', name: 'Back sub', fedBy: 'LFE1'},
	],
});

test('everything is missing at first, in the order of the profile', () => {
	expect(missing(twoSubs)).toEqual([
		['tape', 'FL', true],
		['meter', 'FL', true],
		['tape', 'sub1', true],
		['meter', 'sub1', true],
		['tape', 'sub2', true],
		['meter', 'sub2', true],
		['meter together', 'sub1+sub2', false],
	]);
});

test('readings set aside are still missing', () => {
	const profile = emptyRoom({channels: [{id: 'FL'}], tape: [tape('FL', 3, {setAside: true})]});
	expect(missing(profile)).toContainEqual(['tape', 'FL', true]);
});

test('a distance that follows from others is not missing', () => {
	expect(missing(emptyRoom({channels: [{id: 'FL'}]}), new Map([['middle\nFL', true]]))).toEqual([
		['meter', 'FL', true],
	]);
});

test('subs read together no longer block, only match worse', () => {
	const profile = {
		...twoSubs,
		tape: [tape('FL', 3), tape('sub1', 3), tape('sub2', 3)],
		meter: [level('FL', 75), level(['sub1', 'sub2'], 80)],
	};
	expect(missing(profile)).toEqual([
		['meter', 'sub1', false],
		['meter', 'sub2', false],
	]);
});

test('the sentence says what to do, where', () => {
	const [distance, meter] = missingReadings(twoSubs, observe(twoSubs));
	expect(sentence(missingRemarks([distance!], 'FL', false)[0], twoSubs)).toBe(
		'Front left: no distance to sofa middle yet. Measure from the middle of the speaker’s front to the ear.',
	);
	expect(sentence(missingRemarks([meter!], 'FL', false)[0], twoSubs)).toBe(
		'Front left: no level at sofa middle yet. Read the meter at ear height with the test signal on it alone.',
	);
});
