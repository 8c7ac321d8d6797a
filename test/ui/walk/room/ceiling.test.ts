import {expect, test} from 'vitest';
import type {Profile} from '../../../../source/profile/types.ts';
import {ceilingPrompts} from '../../../../source/ui/walk/room/ceiling.ts';
import {den} from '../../rooms.ts';

function answer(profile: Profile, id: string, text: string): Profile {
	const prompt = ceilingPrompts(profile).find(candidate => candidate.id === id)!;
	const taken = prompt.take(profile, text, {takenAt: ''});
	if (taken.kind !== 'taken') throw new Error(`${id} ${text}: ${taken.kind}`);
	return taken.next;
}

const start = den({lengthUnit: 'm'});

test('nothing but the height is asked before it is known', () => {
	expect(ceilingPrompts(start).map(({id}) => id)).toEqual(['room:height']);
});

test('one height is a flat ceiling', () => {
	expect(answer(start, 'room:height', '2.4').room.ceiling).toEqual({kind: 'flat', heightMetres: 2.4});
});

test('a slope asks for the height at the other wall, and keeps the first', () => {
	let profile = answer(answer(start, 'room:height', '2.4'), 'room:slope', '2');
	expect(ceilingPrompts(profile).at(-1)).toMatchObject({id: 'room:otherHeight', isAnswered: false});
	profile = answer(profile, 'room:otherHeight', '3.1');
	expect(profile.room.ceiling).toEqual({
		kind: 'sloped',
		between: 'wall:left-wall:right',
		heightsMetres: [2.4, 3.1],
	});
	expect(answer(profile, 'room:height', '2.5').room.ceiling).toMatchObject({heightsMetres: [2.5, 3.1]});
});

test('a height of nothing or of more than ten metres is not just taken', () => {
	const [height] = ceilingPrompts(start);
	expect(height!.take(start, '0', {takenAt: ''}).kind).toBe('no');
	expect(height!.take(start, '24', {takenAt: ''}).kind).toBe('ask');
});
