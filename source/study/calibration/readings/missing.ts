import {mainChannels} from '../../../profile/ask/lines.ts';
import {joinedName, meterKey, type Observations, tapeKey} from '../../../profile/ask/readings.ts';
import {referenceSeat} from '../../../profile/ask/seats.ts';
import {subsOf} from '../../../profile/ask/subs.ts';
import {nameOf} from '../../../profile/names.ts';
import type {Profile} from '../../../profile/types.ts';
import type {Remark} from '../result.ts';
import {remark} from '../words.ts';

/** A reading or a piece of data that results wait for. */
export type Missing = {
	readonly kind: 'tape' | 'meter' | 'meter together';
	/** Channel or sub; for a reading of all subs together their joined name. */
	readonly about: string;
	readonly seat: string;
	/** Whether a result cannot be given without it, or only is less sure. */
	readonly blocks: boolean;
	readonly text: string;
};

/**
What is still to be measured, in the order of the profile: for each speaker and sub its distance and its level at the
reference seat, and all subs together.

@param known - Ends whose distance follows from other tape readings, by `tapeKey`.
*/
export function missingReadings(
	profile: Profile,
	observations: Observations,
	known: ReadonlyMap<string, unknown> = new Map(),
): Missing[] {
	const {id: seat, name: seatName} = referenceSeat(profile);
	const subs = subsOf(profile).map(({id}) => id);
	const together = joinedName(subs);
	const hasTogether = subs.length > 1 && observations.meter.has(meterKey(seat, together));
	const missing: Missing[] = [];
	for (const about of [...mainChannels(profile).map(({id}) => id), ...subs]) {
		const name = nameOf(profile, about);
		const key = tapeKey(seat, about);
		if (!observations.tape.has(key) && !known.has(key)) {
			const text = `${name}: no distance to ${seatName} yet. Measure from the middle of the ${subs.includes(about) ? 'sub’s cone' : 'speaker’s front'} to the ear.`;
			missing.push({kind: 'tape', about, seat, blocks: true, text});
		}

		if (!observations.meter.has(meterKey(seat, about))) {
			const text = `${name}: no level at ${seatName} yet. Read the meter at ear height with the test signal on it alone.`;
			missing.push({kind: 'meter', about, seat, blocks: !(subs.includes(about) && hasTogether), text});
		}
	}

	if (subs.length > 1 && !hasTogether) {
		const text = `No level of all subs together at ${seatName} yet. Until then they are assumed to add up in phase.`;
		missing.push({kind: 'meter together', about: together, seat, blocks: false, text});
	}

	return missing;
}

/** What is missing, as remarks of the channel or sub. */
export function missingRemarks(missing: readonly Missing[], about: string): Remark[] {
	return missing
		.filter(entry => entry.about === about)
		.map(({kind, text}) =>
			remark('advice', kind === 'tape' ? 'distance-missing' : 'level-missing', text, about),
		);
}
