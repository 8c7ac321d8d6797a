import {expect, test} from 'vitest';
import type {Profile} from '../../../source/profile/types.ts';
import type {NamedKey, Press} from '../../../source/ui/keys/press.ts';
import {type HubPlan, hubStart, pressHub} from '../../../source/ui/walk/hub.ts';

const plan: HubPlan = {goOn: 'bass:set', first: 'bass:a', lines: 10};
const press = (key: string, from = 0, planned: HubPlan = plan) => {
	const pressed: Press = key.length === 1 ? {key: 'character', text: key} : {key: key as NamedKey};
	return pressHub({from}, pressed, () => planned, {} as Profile);
};

test('Enter goes where the stop goes on, else to the next stop', () => {
	expect(press('enter')).toEqual({kind: 'go', promptId: 'bass:set'});
	expect(press('enter', 0, {...plan, goOn: undefined})).toEqual({kind: 'next'});
});

test('e goes to the value that is furthest off, which the next one replaces, else to the first question', () => {
	expect(press('e')).toEqual({kind: 'go', promptId: 'bass:a'});
	expect(press('e', 0, {...plan, first: undefined})).toEqual({kind: 'none'});
	expect(press('e', 0, {...plan, worst: 'bass:b'})).toEqual({
		kind: 'go',
		promptId: 'bass:b',
		isCorrecting: true,
	});
});

test('arrows scroll, and leave upwards from the top only', () => {
	expect(press('up')).toEqual({kind: 'previous'});
	expect(press('up', 8)).toEqual({kind: 'state', state: {from: 4}});
	expect(press('down', hubStart.from)).toEqual({kind: 'state', state: {from: 4}});
});

test('arrows end with the text, and go on to the walk from there', () => {
	expect(press('down', 8)).toEqual({kind: 'none'});
});

test('other keys are the walk’s', () => {
	for (const key of ['q', 'u', '?', 'tab', ']']) expect(press(key)).toEqual({kind: 'none'});
});
