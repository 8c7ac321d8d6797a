import {expect, test} from 'vitest';
import {referenceSeat} from '../../../source/profile/ask/seats.ts';
import type {Seat} from '../../../source/profile/types.ts';

const sofa: Seat = {id: 'sofa', name: 'Sofa'};
const chair: Seat = {id: 'chair', name: 'Chair'};

test('referenceSeat is the one that is marked, else the first', () => {
	expect(referenceSeat({seats: [sofa, chair]})).toBe(sofa);
	const marked = {...chair, reference: true};
	expect(referenceSeat({seats: [sofa, marked]})).toBe(marked);
});

test('referenceSeat takes nothing but `true` for a mark, as parsed JSON may hold anything', () => {
	expect(referenceSeat({seats: [{id: 'a'}, {id: 'b', reference: 'yes'}]})).toEqual({id: 'a'});
	expect(referenceSeat({seats: []})).toBeUndefined();
});
