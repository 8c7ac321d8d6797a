import fc from 'fast-check';
import {expect, test} from 'vitest';
import {longestTyped, pressesOf} from '../../../source/ui/keys/press.ts';

test('`pressesOf` gives nothing for an empty event or a control key without a use', () => {
	expect(pressesOf('', {})).toEqual([]);
	expect(pressesOf('x', {ctrl: true})).toEqual([]);
	expect(pressesOf('\u0007', {})).toEqual([]);
});

test('`pressesOf` names the keys of the terminal', () => {
	expect(pressesOf('', {return: true})).toEqual([{key: 'enter'}]);
	expect(pressesOf('', {upArrow: true})).toEqual([{key: 'up'}]);
	expect(pressesOf('', {backspace: true})).toEqual([{key: 'erase'}]);
	expect(pressesOf('', {delete: true})).toEqual([{key: 'erase'}]);
	expect(pressesOf('c', {ctrl: true})).toEqual([{key: 'interrupt'}]);
	expect(pressesOf('u', {ctrl: true})).toEqual([{key: 'eraseAll'}]);
	expect(pressesOf('z', {ctrl: true})).toEqual([{key: 'suspend'}]);
	expect(pressesOf('7', {})).toEqual([{key: 'character', text: '7'}]);
});

test('`pressesOf` takes Ctrl-\\ for an interrupt, however the terminal library hands it on', () => {
	expect(pressesOf('\u001c', {})).toEqual([{key: 'interrupt'}]);
	expect(pressesOf('\\', {ctrl: true})).toEqual([{key: 'interrupt'}]);
});

test('`pressesOf` takes a line feed as Enter', () => {
	expect(pressesOf('\n', {})).toEqual([{key: 'enter'}]);
});

test('`pressesOf` splits Escape and a letter that arrive as one event', () => {
	expect(pressesOf('u', {meta: true})).toEqual([{key: 'escape'}, {key: 'character', text: 'u'}]);
	expect(pressesOf('', {escape: true, meta: true})).toEqual([{key: 'escape'}]);
});

test('`pressesOf` puts Enter between the lines of a paste, whatever ends them', () => {
	const lines = [
		{key: 'characters', text: '74.2'},
		{key: 'enter'},
		{key: 'characters', text: '73.9'},
		{key: 'enter'},
	];
	expect(pressesOf('74.2\r73.9\r', {})).toEqual(lines);
	expect(pressesOf('74.2\n73.9\n', {})).toEqual(lines);
	expect(pressesOf('74.2\r\n73.9\r\n', {})).toEqual(lines);
});

test('`pressesOf` drops the markers of bracketed paste, with and without their escape', () => {
	expect(pressesOf('[200~74.2[201~', {})).toEqual([{key: 'characters', text: '74.2'}]);
	expect(pressesOf('\u001b[200~7\u001b[201~', {})).toEqual([{key: 'character', text: '7'}]);
});

test('`pressesOf` cuts a long line and counts characters, not code units', () => {
	const [press] = pressesOf('😀'.repeat(500), {});
	expect(press).toEqual({key: 'characters', text: '😀'.repeat(longestTyped)});
});

test('`pressesOf` never throws and never lets a control character through', () => {
	fc.assert(
		fc.property(fc.string({unit: 'binary', maxLength: 300}), input => {
			for (const press of pressesOf(input, {})) {
				if ('text' in press) expect(press.text).not.toMatch(/[\u0000-\u001f\u007f]/);
			}
		}),
	);
});

test('`pressesOf` drops clicks that a terminal reports unasked', () => {
	expect(pressesOf('\u001b[<0;10;10M\u001b[<0;10;10m', {})).toEqual([]);
	expect(pressesOf('[<0;10;10M9-4', {})).toEqual([{key: 'characters', text: '9-4'}]);
});
