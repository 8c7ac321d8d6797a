import {expect, test} from 'vitest';
import type {Command} from '../../source/commands/command.ts';
import {argumentProblems, argumentRange} from '../../source/commands/usage.ts';

test.each([
	['', 0, 0],
	['PROFILE', 1, 1],
	['[PROFILE]', 0, 1],
	['OLD NEW', 2, 2],
	['FILE...', 1, Infinity],
	['[FILE...]', 0, Infinity],
	['PROFILE [NAME]', 1, 2],
])('`argumentRange` reads “%s” as %i to %d', (takes, least, most) => {
	expect(argumentRange(takes)).toEqual({least, most});
});

const command: Command = {name: 'diff', summary: '', takes: 'OLD NEW', examples: [], run: async () => 0};

test('`argumentProblems` names what is missing and what is too much', () => {
	expect(argumentProblems(command, ['a', 'b'])).toEqual([]);
	expect(argumentProblems(command, ['a'])).toEqual(['diff: NEW is missing. Usage: roomtare diff OLD NEW']);
	expect(argumentProblems(command, ['a', 'b', 'c'])).toEqual([
		'diff: “c” is one argument too many. Usage: roomtare diff OLD NEW',
	]);
});
