import {renderToString} from 'ink';
import {expect, test} from 'vitest';
import {type Press, pressesOf} from '../../../source/ui/keys/press.ts';
import {openWalk} from '../../../source/ui/screens/openWalk.ts';
import {pressAll} from '../../../source/ui/screens/press.ts';
import type {AppScreen, WalkScreen, World} from '../../../source/ui/screens/screen.ts';
import {WalkPlan} from '../../../source/ui/screens/walkPlan.tsx';
import {withDecided} from '../../../source/ui/walk/dialIn/decide.ts';
import {memoryFiles} from '../memoryFiles.ts';
import {exampleProfile} from '../walk/dialIn/exampleProfile.ts';

const decided = withDecided(exampleProfile(), '2026-04-18T10:00:00Z');

function open(prompt: string) {
	const files = memoryFiles({attic: {...decided, walk: {prompt}}});
	const world: World = {files, now: () => new Date('2026-04-18T20:00:00Z')};
	let screen: AppScreen = openWalk(world, 'attic')!;
	return (...presses: ReadonlyArray<Press | string>): WalkScreen => {
		for (const press of presses)
			screen = pressAll(screen, typeof press === 'string' ? pressesOf(press, {}) : [press], world);
		return screen as WalkScreen;
	};
}

test('p shows the plan at a question and hides it again', () => {
	const press = open('room:width');
	expect(press('p').state.isPlanShown).toBe(true);
	expect(press('p').state.isPlanShown).toBe(false);
});

test('Enter and Esc close the plan and do nothing else', () => {
	const press = open('room:width');
	expect(press('p', {key: 'enter'}).state).toMatchObject({isPlanShown: false, promptId: 'room:width'});
	expect(press('p', {key: 'escape'}).state).toMatchObject({isPlanShown: false, promptId: 'room:width'});
});

test('a figure typed with the plan open brings the question back', () => {
	expect(open('room:width')('p', '4').state).toMatchObject({isPlanShown: false, typed: '4'});
});

test('keys of a page do nothing unseen while the plan hides it', () => {
	const press = open('dialIn');
	const {state} = press('p', {key: 'enter'});
	expect(state.subject.settings!.at(-1)!.dialledIn).toEqual([]);
	expect(press({key: 'enter'}).state.subject.settings!.at(-1)!.dialledIn).not.toEqual([]);
});

test.each([60, 80, 120, 160])(
	'WalkPlan tells at %i columns what it needs when nothing has a place',
	columns => {
		const profile = exampleProfile({tape: []});
		const frame = renderToString(<WalkPlan profile={profile} columns={columns} rows={20} />, {columns});
		expect(frame).toContain('No plan yet');
	},
);
