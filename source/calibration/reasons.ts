import type {Profile} from '../profile/types.ts';
import type {Arrival} from './delays.ts';
import {receiverOf, usualReceiverSpeed} from './gear.ts';
import type {SeatLevel} from './levels.ts';
import type {Dialled, Remark} from './result.ts';
import {inDb, inLength, inMs, inSignedDb, nameOf, number, remark} from './words.ts';

/** How the timing of one channel came about. */
export function timingReason(
	profile: Profile,
	arrival: Arrival,
	latest: Arrival,
	dialled: Dialled & {readonly kind: 'delay' | 'distance'},
	metresPerSecond: number,
): Remark {
	const {id, distance, latencies, value} = arrival;
	const unit = profile.lengthUnit;
	const late = latencies.map(({at, milliseconds}) => ` and ${inMs(milliseconds)} at ${at}`).join('');
	const way = `${inLength(distance.metres, unit)} at ${number(metresPerSecond)} m/s${late} make ${inMs(value, 2)}`;
	const {timing} = receiverOf(profile).receiver;
	const ownSpeed =
		timing.kind === 'distance' ? (timing.speedOfSoundMetresPerSecond ?? usualReceiverSpeed) : undefined;
	const rest =
		dialled.kind === 'distance'
			? `with the receiver's ${number(ownSpeed!)} m/s that is ${inLength(dialled.exact, unit)}, entered as ${inLength(dialled.stepped, unit)}`
			: id === latest.id
				? `the latest arrival, so the others wait for it; entered as ${inMs(dialled.stepped, 2)}`
				: `${nameOf(profile, latest.id)} comes last after ${inMs(latest.value, 2)}, so ${inMs(dialled.exact, 2)}, entered as ${inMs(dialled.stepped, 2)}`;
	return remark('note', 'timing-reason', `${nameOf(profile, id)}: ${way}; ${rest}.`, id);
}

/** How the trim of one channel came about. */
export function trimReason(
	profile: Profile,
	id: string,
	level: SeatLevel,
	dialled: Dialled,
	targetDb: number,
	masterVolumeChangeDb: number,
): Remark {
	const wanted = targetDb - level.atZeroTrimDb;
	const common =
		Math.abs(masterVolumeChangeDb) < 0.05
			? ''
			: `, less ${inDb(masterVolumeChangeDb)} that is common to all and left to the master volume`;
	const text = `${nameOf(profile, id)}: target ${inDb(targetDb)} less ${inDb(level.decibels)} read, with ${inDb(level.gainInForceDb)} in force, makes ${inSignedDb(wanted)}${common}; entered as ${inSignedDb(dialled.stepped)}.`;
	return remark('note', 'trim-reason', text, id);
}
