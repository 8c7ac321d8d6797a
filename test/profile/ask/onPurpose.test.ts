import {expect, test} from 'vitest';
import {delayedSubs} from '../../../source/profile/ask/onPurpose.ts';
import {isForLevels} from '../../../source/profile/ask/readings.ts';
import {parseProfile} from '../../../source/profile/file/parse.ts';
import {newProfile} from '../../../source/profile/generic/newProfile.ts';
import type {MeterReading} from '../../../source/profile/types.ts';

const subs = ['sub1', 'sub2'];

test('an added delay concerns the subs that are named, else all beside a speaker, else the last', () => {
	expect(delayedSubs({addedDelayMs: 4, addedDelaySources: ['sub1']}, subs, false)).toEqual(['sub1']);
	expect(delayedSubs({addedDelayMs: 4, addedDelaySources: ['sub1']}, subs, true)).toEqual(['sub1']);
	expect(delayedSubs({addedDelayMs: 4}, subs, true)).toEqual(subs);
	expect(delayedSubs({addedDelayMs: 4}, subs, false)).toEqual(['sub2']);
	// One that did not sound is not moved by it.
	expect(delayedSubs({addedDelayMs: 4, addedDelaySources: ['sub3']}, subs, true)).toEqual([]);
});

const reading: MeterReading = {
	source: subs,
	seat: 'seat1',
	decibels: 75,
	weighting: 'C',
	round: 'first',
	signal: {kind: 'pink', fromHertz: 28.2, toHertz: 112.2},
};
const profile = newProfile({name: 'Den', date: '2026-04-18', layout: '5.1', subs: 2});
const parsed = (meter: readonly object[]) => parseProfile(JSON.stringify({...profile, meter}), 'test');

test('a reading with one sub delayed or turned on purpose keeps what was changed, and counts for no level', () => {
	const delayed = {...reading, addedDelayMs: 5.6, addedDelaySources: ['sub2']};
	const kept = parsed([delayed]);
	expect(kept).toMatchObject({ok: true, profile: {meter: [delayed]}});
	expect(isForLevels(reading)).toBe(true);
	expect(isForLevels(delayed)).toBe(false);
	expect(isForLevels({...reading, invertedSources: ['sub2']})).toBe(false);
});

test.each([
	['nothing', []],
	['a text', 'sub2'],
	['a number in it', [2]],
])('%s as the delayed subs is told with its place', (_, addedDelaySources) => {
	const result = parsed([{...reading, addedDelayMs: 5.6, addedDelaySources}]);
	expect(result.ok).toBe(false);
	expect(JSON.stringify(result)).toContain('addedDelaySources');
});
