import {decimalsOf, formatNumber, formatSigned} from '../profile/units/decimalText.ts';

/** A trim or gain as a level control shows it, without unit: `+1.5`, `−0.5`, `0.0`. Decibels. */
export function formatTrim(decibels: number): string {
	return formatSigned(decibels, decimalsOf(decibels));
}

/** A delay as a box shows it, with unit: `3.2 ms`. Milliseconds. */
export function formatDelay(milliseconds: number): string {
	return `${formatNumber(milliseconds, decimalsOf(milliseconds))} ms`;
}
