import {mainChannels} from '../../../profile/ask/lines.ts';
import {joinedName, meterKey, type Observations, tapeKey} from '../../../profile/ask/readings.ts';
import {referenceSeat} from '../../../profile/ask/seats.ts';
import {subsOf} from '../../../profile/ask/subs.ts';
import {finding} from '../../../profile/finding.ts';
import type {Profile} from '../../../profile/types.ts';
import type {MissingFinding} from './facts.ts';

/** A reading or a piece of data that results wait for. */
export type Missing = {
	readonly kind: 'tape' | 'meter' | 'meter together';
	/** Channel or sub; for a reading of all subs together their joined name. */
	readonly about: string;
	readonly seat: string;
	/** Whether a result cannot be given without it, or only is less sure. */
	readonly blocks: boolean;
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
	const {id: seat} = referenceSeat(profile);
	const subs = subsOf(profile).map(({id}) => id);
	const together = joinedName(subs);
	const hasTogether = subs.length > 1 && observations.meter.has(meterKey(seat, together));
	const missing: Missing[] = [];
	for (const about of [...mainChannels(profile).map(({id}) => id), ...subs]) {
		const key = tapeKey(seat, about);
		if (!observations.tape.has(key) && !known.has(key)) {
			missing.push({kind: 'tape', about, seat, blocks: true});
		}

		if (!observations.meter.has(meterKey(seat, about))) {
			missing.push({kind: 'meter', about, seat, blocks: !(subs.includes(about) && hasTogether)});
		}
	}

	if (subs.length > 1 && !hasTogether) {
		missing.push({kind: 'meter together', about: together, seat, blocks: false});
	}

	return missing;
}

/** What is missing of one channel or sub. */
export function missingRemarks(missing: readonly Missing[], about: string, isSub: boolean): MissingFinding[] {
	return missing
		.filter(entry => entry.about === about)
		.map(({kind, seat}) =>
			kind === 'tape'
				? finding('advice', 'distance-missing', [about], {seat, isSub})
				: finding('advice', 'level-missing', [about], {seat}),
		);
}
