import {expect, test} from 'vitest';
import type {Profile} from '../../../../source/profile/types.ts';
import {readLimit, readSensitivity} from '../../../../source/ui/walk/kit/dataSheet.ts';
import {kitPrompts} from '../../../../source/ui/walk/kit/kit.ts';
import {den} from '../../rooms.ts';

test.each([
	['45', 45, undefined],
	['45 Hz', 45, undefined],
	['45 -6dB', 45, 6],
	['45-6', 45, 6],
	['45 Hz at −10 dB', 45, 10],
	['0,045 kHz @ -3 dB', 45, 3],
])('`readLimit` reads “%s”', (text, hertz, dropDb) => {
	expect(readLimit(text)).toMatchObject({kind: 'ok', hertz, ...(dropDb && {dropDb})});
	expect('dropDb' in readLimit(text)).toBe(dropDb !== undefined);
});

test.each(['45 -4 dB', '-6', '', 'low'])('`readLimit` refuses “%s”', text => {
	expect(readLimit(text).kind).toBe('no');
});

test.each([
	['89', 89, '2.83 V'],
	['89,5 dB', 89.5, '2.83 V'],
	['89 1W', 89, '1 W'],
	['89 dB 1 W/1 m', 89, '1 W'],
	['89 dB at 2.83 V', 89, '2.83 V'],
])('`readSensitivity` reads “%s”', (text, value, basis) => {
	expect(readSensitivity(text)).toMatchObject({kind: 'ok', value, basis});
});

test.each(['89 2W', '130', '1W', ''])('`readSensitivity` refuses “%s”', text => {
	expect(readSensitivity(text).kind).toBe('no');
});

const promptOf = (profile: Profile, id: string) => kitPrompts(profile).find(prompt => prompt.id === id)!;

function answer(profile: Profile, id: string, text: string): Profile {
	const taken = promptOf(profile, id).take(profile, text, {takenAt: ''});
	if (taken.kind !== 'taken') throw new Error(`${id} ${text}: ${taken.kind}`);
	return taken.next;
}

test('the drop and the basis are kept and shown, and a value typed anew forgets them', () => {
	const stated = answer(answer(den(), 'kit:lowLimit:FL', '45 -6dB'), 'kit:sensitivityDb:FL', '89 1W');
	expect(promptOf(stated, 'kit:lowLimit:FL').values).toEqual(['45 Hz at −6 dB']);
	expect(promptOf(stated, 'kit:sensitivityDb:FL').values).toEqual(['89 dB for 1 W']);
	const anew = answer(answer(stated, 'kit:lowLimit:FL', '50'), 'kit:sensitivityDb:FL', '90');
	expect(promptOf(anew, 'kit:lowLimit:FL').values).toEqual(['50 Hz at −3 dB']);
	expect(promptOf(anew, 'kit:sensitivityDb:FL').values).toEqual(['90 dB for 2.83 V']);
});

test('the Q of a closed box may follow its number, for speakers and subs, and goes with a vented one', () => {
	for (const id of ['kit:box:FL', 'kit:box:sub1']) {
		const closed = answer(den(), id, '1 0.6');
		expect(promptOf(closed, id).values).toEqual(['Closed, Q 0.6']);
		expect(promptOf(answer(closed, id, '2'), id).values).toEqual(['Vented']);
		expect(promptOf(answer(closed, id, '1'), id).values).toEqual(['Closed']);
		expect(promptOf(den(), id).take(den(), '1 9', {takenAt: ''}).kind).toBe('no');
		expect(promptOf(den(), id).take(den(), '2 0.6', {takenAt: ''}).kind).toBe('no');
	}
});
