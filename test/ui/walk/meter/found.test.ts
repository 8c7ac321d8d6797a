import {expect, test} from 'vitest';
import type {Profile} from '../../../../source/profile/types.ts';
import {foundPrompts} from '../../../../source/ui/walk/meter/found.ts';
import {meterPrompts} from '../../../../source/ui/walk/meter/meter.ts';
import {promptsFor} from '../../../../source/ui/walk/stops.ts';
import {den} from '../../rooms.ts';

const at = {takenAt: '2026-04-18T20:00:00.000Z'};

function choose(profile: Profile, text: string, id = 'meter:start'): Profile {
	const prompt = meterPrompts(profile).find(candidate => candidate.id === id)!;
	const taken = prompt.take(profile, text, at);
	if (taken.kind !== 'taken') throw new Error(`${id} ${text}: ${taken.kind}`);
	return taken.next;
}

test('the caution for ears stands where noise is switched on, not where trims are told', () => {
	const first = meterPrompts(den()).find(({id}) => id === 'meter:FL:seat1')!;
	expect(first.caution).toMatch(/Ears: .*85 dB\(A\)/);
	expect(foundPrompts(den())[0]!.caution).toBeUndefined();
});

test('all trims at zero are kept as a set that the readings name', () => {
	const profile = choose(choose(den(), '1'), '74.2', 'meter:FL:seat1');
	expect(profile.settings).toMatchObject([
		{id: 'found', origin: 'found', channels: {FL: {trimDb: {stepped: 0}}}},
	]);
	expect(profile.meter).toMatchObject([{source: 'FL', inForce: 'found'}]);
});

test('other trims are asked channel by channel before the noise', () => {
	let profile = choose(den(), '2');
	const ids = foundPrompts(profile).map(({id}) => id);
	expect(ids).toEqual(['meter:start', ...den().channels.map(({id}) => `meter:trim:${id}`)]);
	profile = choose(profile, '-2.5', 'meter:trim:FL');
	expect(profile.settings![0]!.channels).toEqual({FL: {trimDb: {stepped: -2.5}}});
	expect(foundPrompts(profile)[1]).toMatchObject({isAnswered: true, values: ['−2.5 dB']});
});

test('the last set can be the one in force, and its trims are taken over', () => {
	const last = {
		id: 'last',
		name: 'Last year',
		origin: 'entered',
		channels: {FL: {trimDb: {stepped: 1.5}}},
	} as const;
	const profile = choose(den({settings: [structuredClone(last)]}), '3');
	expect(profile.settings).toMatchObject([last, {id: 'found', origin: 'found', channels: last.channels}]);
	expect(foundPrompts(profile)[0]!.values).toEqual(['As in “Last year”']);
});

test('another answer after readings were taken leaves the set that they name as it was', () => {
	let profile = choose(choose(den(), '1'), '74.2', 'meter:FL:seat1');
	profile = choose(profile, '2');
	expect(profile.settings!.map(({id}) => id)).toEqual(['found', 'found2']);
	profile = choose(choose(profile, '3', 'meter:trim:FL'), '77', 'meter:FL:seat1');
	expect(profile.meter!.map(({inForce}) => inForce)).toEqual(['found', 'found2']);
	expect(profile.settings![0]!.channels.FL).toEqual({trimDb: {stepped: 0}});
});

test('a trim beyond what the receiver takes is refused with its limits', () => {
	const profile = choose(den(), '2');
	const prompt = foundPrompts(profile)[1]!;
	expect(prompt.take(profile, '40', at)).toMatchObject({kind: 'no', why: expect.stringContaining('10 dB')});
});

test('the caution for ears stands whole with the readings until the first is taken, then as one short line', () => {
	const cautions = (profile: Profile) =>
		promptsFor(profile)
			.filter(({id}) => /^meter:(FL|FC|sub)/.test(id))
			.map(({caution}) => caution);
	const before = choose(den(), '1');
	expect(cautions(before).every(caution => caution?.startsWith('Ears: '))).toBe(true);
	const after = new Set(cautions(choose(before, '74.2', 'meter:FL:seat1')));
	expect(after.size).toBe(1);
	for (const caution of after) expect(caution!.length).toBeLessThan(60);
});

test('already the second channel is asked about where it is far from the first', () => {
	const one = choose(choose(den(), '1'), '75', 'meter:FL:seat1');
	const second = meterPrompts(one).find(({id}) => id === 'meter:FC:seat1')!;
	expect(second.take(one, '40', at)).toMatchObject({
		kind: 'taken',
		doubt: expect.stringMatching(/35 dB below the other channel\./),
	});
	expect(second.take(one, '74', at)).not.toHaveProperty('doubt', expect.any(String));
});
