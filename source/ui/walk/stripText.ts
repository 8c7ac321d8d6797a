import {cellWidth} from '../../report/fitCells.ts';
import type {StopStatus} from './progress.ts';

/** One stop in words: what is done, what is still needed. The current one stands in brackets. */
function stopText(
	{name, state, answered, required}: StopStatus,
	isCurrent: boolean,
	isShort: boolean,
): string {
	const count = `${answered}/${required}`;
	const told = {
		done: `${name} ✓`,
		open: `${name} ${count}`,
		later: isShort ? name : `${name} later`,
		page: name,
		missed: `${name} !`,
	}[state];
	return isCurrent ? `[${told}]` : ` ${told} `;
}

/** The stops on one line; shortened where the terminal is narrow. */
export function stripText(stops: readonly StopStatus[], currentId: string, columns: number): string {
	const full = stops.map(stop => stopText(stop, stop.id === currentId, false)).join(' ');
	if (cellWidth(full) <= columns) return full;
	const short = stops.map(stop => stopText(stop, stop.id === currentId, true)).join('');
	if (cellWidth(short) <= columns) return short;
	const at = stops.findIndex(({id}) => id === currentId);
	return stops
		.slice(Math.max(0, at - 1), at + 2)
		.map(stop => stopText(stop, stop.id === currentId, true))
		.join('');
}

/** The strip in words for a screen reader: what blocks the settings, and where one stands. */
export function stripWords(stops: readonly StopStatus[], currentId: string): string {
	const current = stops.find(({id}) => id === currentId)?.name ?? '';
	const open = stops
		.filter(({state}) => state === 'open')
		.map(({name, answered, required}) => `${name}, ${required - answered} needed`);
	const missed = stops.filter(({state}) => state === 'missed').map(({name}) => ` ${name} missed.`);
	return `Stop ${current}. ${open.length === 0 ? 'All that is needed is answered.' : `Open: ${open.join('; ')}.`}${missed.join('')}`;
}
