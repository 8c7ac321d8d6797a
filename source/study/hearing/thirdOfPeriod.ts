import {control, receiverOf, timingControl} from '../../profile/ask/boxes.ts';
import {receiverDelayMs} from '../../profile/ask/lines.ts';
import {standingSettings} from '../../profile/ask/settings.ts';
import {usualCrossoverHertz} from '../../profile/practice.ts';
import type {Profile, Receiver} from '../../profile/types.ts';
import {crossoverUnder} from './crossoverOf.ts';

/** A delay moved on purpose, and what the box shows of it. */
export type MovedDelay = {
	/** Later by this, ms; less than 0 is earlier. */
	readonly addedMs: number;
	/** How the receiver takes it: its entries are in ms or metres. */
	readonly timing: Receiver['timing'];
	/** Change of the entry. */
	readonly change: number;
	/** What stands and what to enter; absent where nobody said what stands. */
	readonly from?: number;
	readonly to?: number;
};

/**
A third of a period of the crossover on a line of the receiver, in its steps: 4.2 ms at 80 Hz. Half a period would be blind at
twice the crossover.

@returns `undefined` where the entry reaches neither so much later nor so much earlier.
*/
export function thirdOfPeriod(profile: Profile, channel: string): MovedDelay | undefined {
	const set = standingSettings(profile);
	const hertz = ['FL', 'FR', 'FC'].flatMap(id => crossoverUnder(profile, set, id) ?? [])[0];
	const {receiver} = receiverOf(profile);
	const {kind, delay, toEntry, entryPerMs} = timingControl(receiver);
	const {step, minimum, maximum} = control(delay.step, delay.minimum, delay.maximum);
	const size = Math.max(1, Math.round(1000 / (3 * (hertz ?? usualCrossoverHertz)) / step)) * step;
	const standing = receiverDelayMs(profile, set, channel);
	const addedMs = [size, -size].find(
		added =>
			standing === undefined || (standing + added >= minimum - 1e-9 && standing + added <= maximum + 1e-9),
	);
	if (addedMs === undefined) return undefined;
	return {
		addedMs,
		timing: receiver.timing,
		change: kind === 'distance' ? -addedMs * entryPerMs : addedMs,
		...(standing !== undefined && {from: toEntry(standing), to: toEntry(standing + addedMs)}),
	};
}
