import {receiverOf, receiverSpeed} from '../../profile/ask/boxes.ts';
import {finding} from '../../profile/finding.ts';
import type {Profile} from '../../profile/types.ts';
import type {LevelFinding} from './levels/facts.ts';
import type {SeatLevel} from './levels/levels.ts';
import type {Dialled} from './result.ts';
import type {TimingEntry, TimingFinding} from './timing/facts.ts';
import type {Arrival} from './timing/result.ts';

/** How the timing of one channel came about. */
export function timingReason(
	profile: Profile,
	arrival: Arrival,
	latest: Arrival,
	dialled: Dialled & {readonly kind: 'delay' | 'distance'},
	metresPerSecond: number,
): TimingFinding {
	const {id, distance, latencies, value} = arrival;
	return finding('note', 'timing-reason', [id], {
		metres: distance.metres,
		metresPerSecond,
		latencies,
		arrivalMs: value,
		entry: typedIn(profile, id, latest, dialled),
	});
}

function typedIn(profile: Profile, id: string, latest: Arrival, {exact, stepped}: Dialled): TimingEntry {
	const {timing} = receiverOf(profile).receiver;
	if (timing.kind === 'distance') {
		return {
			kind: 'distance',
			receiverSpeed: receiverSpeed(profile.receiver),
			exactMetres: exact,
			steppedMetres: stepped,
			shownAs: timing,
		};
	}

	return {
		kind: 'delay',
		exactMs: exact,
		steppedMs: stepped,
		...(id !== latest.id && {last: {id: latest.id, arrivalMs: latest.value}}),
	};
}

/** How the trim of one channel came about. */
export function trimReason(
	id: string,
	level: SeatLevel,
	dialled: Dialled,
	targetDb: number,
	masterVolumeChangeDb: number,
): LevelFinding {
	return finding('note', 'trim-reason', [id], {
		targetDb,
		levelDb: level.decibels,
		gainInForceDb: level.gainInForceDb,
		wantedDb: targetDb - level.atZeroTrimDb,
		commonDb: Math.abs(masterVolumeChangeDb) < leastToldDb ? 0 : masterVolumeChangeDb,
		steppedDb: dialled.stepped,
	});
}

/** Less would read as nothing, dB. */
const leastToldDb = 0.05;
