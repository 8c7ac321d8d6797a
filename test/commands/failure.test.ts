import {expect, test} from 'vitest';
import {sayFailure} from '../../source/commands/failure.ts';
import {Trouble} from '../../source/platform/trouble.ts';

function said(error: unknown, wantsStack = false) {
	const lines: string[] = [];
	const code = sayFailure(error, text => lines.push(text), wantsStack);
	return {code, lines};
}

test('`sayFailure` says each problem of a trouble and nothing else', () => {
	expect(said(new Trouble(['a.json: empty.', 'b.json: empty.']), true)).toEqual({
		code: 2,
		lines: ['a.json: empty.', 'b.json: empty.'],
	});
});

test('`sayFailure` tells an unexpected error in one line, with the stack only on demand', () => {
	const {code, lines} = said(new TypeError('x is not a function'));
	expect(code).toBe(2);
	expect(lines).toHaveLength(1);
	expect(lines[0]).toContain('TypeError: x is not a function');
	expect(said(new TypeError('x'), true).lines[1]).toContain('failure.test.ts');
	expect(said('a text').lines[0]).toContain('(a text)');
});

test('`sayFailure` gives scripts the same as JSON', () => {
	const printed: string[] = [];
	sayFailure(
		new Trouble(['a.json: empty.']),
		() => {},
		false,
		text => printed.push(text),
	);
	sayFailure(
		new TypeError('x'),
		() => {},
		false,
		text => printed.push(text),
	);
	expect(JSON.parse(printed[0]!)).toEqual({error: 'trouble', problems: ['a.json: empty.']});
	expect(JSON.parse(printed[1]!)).toMatchObject({error: 'fault', problems: [expect.stringContaining('x')]});
});
