import {describe, expect, test} from 'vitest';
import type {Profile} from '../../../../source/profile/types.ts';
import type {Written} from '../../../../source/ui/files.ts';
import type {Press} from '../../../../source/ui/keys/press.ts';
import {
	type KeepState,
	keepStart,
	pressKeep,
	sheetScreenLines,
} from '../../../../source/ui/walk/keep/keepState.ts';
import {factsOf} from '../../../../source/ui/walk/stops.ts';
import {den} from '../../rooms.ts';

const profile: Profile = {
	...den(),
	tape: [{from: 'seat1', to: 'FL', metres: 3}],
	meter: [{source: 'FL', seat: 'seat1', decibels: 74, weighting: 'C', round: 'first'}],
};
const world = {walk: factsOf(profile)};
const key = (text: string): Press => ({key: 'character', text});

function stateAfter(state: KeepState, press: Press): KeepState {
	const pressed = pressKeep(profile, state, press, world);
	if (pressed.kind !== 'state') throw new Error(`The key made ${pressed.kind}.`);
	return pressed.state;
}

describe('the page for the cabinet door', () => {
	test('is shown by d, scrolled by the arrows within its lines, and left by Esc', () => {
		const shown = stateAfter(keepStart, key('d'));
		expect(shown).toMatchObject({isSheetShown: true, from: 0});
		expect(stateAfter(shown, {key: 'up'}).from).toBe(0);
		let state = shown;
		for (let count = 0; count < 500; count++) state = stateAfter(state, {key: 'down'});
		expect(state.from).toBeGreaterThan(10);
		expect(state.from).toBeLessThan(sheetScreenLines(profile, 78).length);
		expect(stateAfter(state, {key: 'escape'}).isSheetShown).toBe(false);
	});

	test('is written by w as a page to print and as plain text, and the paths are told', () => {
		const pressed = pressKeep(profile, keepStart, key('w'), world);
		if (pressed.kind !== 'write') throw new Error(`w made ${pressed.kind}.`);
		expect(pressed.documents.map(({ending}) => ending)).toEqual(['-door.html', '-door.txt']);
		expect(pressed.documents[0]!.text).toMatch(/^<!DOCTYPE html>/);
		for (const {text} of pressed.documents) expect(text).toContain('Front left');
		const written: Written[] = [
			{ok: true, path: '/kept/den-door.html'},
			{ok: false, text: 'The disk is full.'},
		];
		expect(pressed.after(written).said).toEqual([
			{isGood: true, text: 'Written: den-door.html, in /kept/'},
			{isGood: false, text: 'The disk is full.'},
		]);
	});

	test('leaves the walk’s own keys alone on the summary', () => {
		for (const press of [{key: 'up'}, key('q'), key('u')] as Press[]) {
			expect(pressKeep(profile, keepStart, press, world).kind).toBe('none');
		}
	});
});

test('l writes two labels for each cable', () => {
	const pressed = pressKeep(profile, keepStart, key('l'), world);
	if (pressed.kind !== 'write') throw new Error(`l made ${pressed.kind}.`);
	const [{text, ending}] = pressed.documents as ReadonlyArray<{text: string; ending: string}> as [
		{text: string; ending: string},
	];
	expect(ending).toBe('-labels.html');
	// Seven speakers and one sub, a label at each end.
	expect(text.match(/<li>/g)).toHaveLength(16);
});
