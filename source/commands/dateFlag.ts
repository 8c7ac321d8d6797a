import {Trouble} from '../platform/trouble.ts';
import {isoDate} from '../profile/schema/primitives.ts';
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

	if (!isoDate.safeParse(given).success)
		throw new Trouble(`--date: “${String(given)}” is no date. Expected one like 2026-04-18.`);
	return String(given);
}
