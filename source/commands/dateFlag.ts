import {Trouble} from '../platform/trouble.ts';
import type {CommandContext, Flag} from './command.ts';

export const dateFlag: Flag = {
	type: 'string',
	value: 'DATE',
	help: 'Day of the round, such as 2026-04-18; today where not given',
};

/**
The day that `--date` gives, else today on the local calendar.

@throws {Trouble} If it is no date.
*/
export function dateOf({flags, now}: CommandContext): string {
	const given = flags.date;
	if (given === undefined) {
		const today = now();
		const twoDigits = (number: number) => String(number).padStart(2, '0');
		return `${today.getFullYear()}-${twoDigits(today.getMonth() + 1)}-${twoDigits(today.getDate())}`;
	}

	if (!isDay(given))
		throw new Trouble(`--date: “${String(given)}” is no date. Expected one like 2026-04-18.`);
	return String(given);
}

/** Whether a text is a day of the calendar, YYYY-MM-DD. */
function isDay(text: unknown): text is string {
	if (typeof text !== 'string' || !/^\d{4}-\d{2}-\d{2}$/.test(text)) return false;
	const time = Date.parse(text);
	// The 30th of February is taken for the 2nd of March.
	return !Number.isNaN(time) && new Date(time).toISOString().startsWith(text);
}
