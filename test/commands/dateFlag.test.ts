import {expect, test} from 'vitest';
import type {CommandContext} from '../../source/commands/command.ts';
import {dateOf} from '../../source/commands/dateFlag.ts';
import {isoDate} from '../../source/profile/schema/primitives.ts';

const asked = (date: unknown) =>
	dateOf({flags: date === undefined ? {} : {date}, now: () => new Date(2026, 0, 5)} as CommandContext);

test('today on the local calendar stands where no day is given', () => {
	expect(asked(undefined)).toBe('2026-01-05');
});

test.each([
	'2026-04-18',
	'2024-02-29',
	'2026-12-31',
	'2023-02-29',
	'2026-02-30',
	'2026-04-31',
	'2026-13-01',
	'2026-00-10',
	'2026-4-18',
	'18.4.2026',
	'2026-04-18T12:00:00Z',
	'',
])('“%s” is a day exactly where the schema of profiles takes it', text => {
	if (isoDate.safeParse(text).success) expect(asked(text)).toBe(text);
	else expect(() => asked(text)).toThrow(`--date: “${text}” is no date. Expected one like 2026-04-18.`);
});
