import {expect, test} from 'vitest';
import type {Profile} from '../../../../source/profile/types.ts';
import {meterPrompts} from '../../../../source/ui/walk/meter/meter.ts';
import {den} from '../../rooms.ts';

const at = {takenAt: '2026-04-18T20:00:00.000Z'};
const ids = (profile: Profile) => meterPrompts(profile).map(({id}) => id);

function answer(profile: Profile, id: string, text: string): Profile {
	const taken = meterPrompts(profile)
		.find(prompt => prompt.id === id)!
		.take(profile, text, at);
	if (taken.kind !== 'taken') throw new Error(`${id} ${text}: ${taken.kind}`);
	return taken.next;
}

test('further points around a seat are there to be gone to, and never come by themselves', () => {
	const offer = meterPrompts(den()).find(({id}) => id === 'meter:points')!;
	expect(offer).toMatchObject({isRequired: false, isAnswered: false});
	expect(offer.isOffered).not.toBe(true);
	expect(ids(den()).filter(id => id.includes(':point'))).toEqual(['meter:points']);
});

test('three points ask for each speaker left and right of the ear, and no sub', () => {
	const asked = ids(answer(den(), 'meter:points', '2')).filter(
		id => id.includes(':point') && id !== 'meter:points',
	);
	const mains = den().channels.filter(({id}) => !id.startsWith('LFE'));
	expect(asked).toHaveLength(2 * mains.length);
	expect(asked).toContain('meter:FL:seat1:point3');
	expect(asked.some(id => id.includes('sub'))).toBe(false);
});

test('a reading at a point is kept as such, and answers no other question', () => {
	const profile = answer(answer(den(), 'meter:points', '3'), 'meter:FL:seat1:point5', '74.1');
	expect(profile.meter!.at(-1)).toMatchObject({source: 'FL', seat: 'seat1', point: 5, decibels: 74.1});
	const find = (id: string) => meterPrompts(profile).find(prompt => prompt.id === id)!;
	expect(find('meter:FL:seat1').isAnswered).toBe(false);
	expect(find('meter:FL:seat1:point4').isAnswered).toBe(false);
	expect(find('meter:FL:seat1:point5').isAnswered).toBe(true);
});
