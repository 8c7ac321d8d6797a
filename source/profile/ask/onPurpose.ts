import type {MeterReading} from '../types.ts';

/** What was changed for one reading on top of the settings in force. */
export type ChangedOnPurpose = Pick<MeterReading, 'addedDelayMs' | 'addedDelaySources' | 'invertedSources'>;

/**
The subs that the added delay of a reading concerned: those named; else all that sounded with a speaker, and without one
the last of them.

@param subs - That sounded, in the profile's order.
@param hasMains - Whether a speaker sounded with them.
*/
export function delayedSubs(
	{addedDelaySources}: ChangedOnPurpose,
	subs: readonly string[],
	hasMains: boolean,
): readonly string[] {
	if (addedDelaySources) return subs.filter(id => addedDelaySources.includes(id));
	return hasMains ? subs : subs.slice(-1);
}
