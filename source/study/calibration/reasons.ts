import {receiverOf, receiverSpeed} from '../../profile/ask/boxes.ts';
import {nameOf} from '../../profile/names.ts';
import type {Profile, Receiver} from '../../profile/types.ts';
import type {SeatLevel} from './levels/levels.ts';
import type {Dialled, Remark} from './result.ts';
import type {Arrival} from './timing/delays.ts';
import {inDb, inLength, inMs, inSignedDb, number, remark} from './words.ts';

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
	const ownSpeed = timing.kind === 'distance' ? receiverSpeed(profile.receiver) : undefined;
	const rest =
		dialled.kind === 'distance'
			? `with the receiver's ${number(ownSpeed!)} m/s that is ${entryText(dialled.exact, timing, true)}, entered as ${entryText(dialled.stepped, timing)}`
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

const metresPerUnit = {m: 1, cm: 0.01, ft: 0.3048, in: 0.0254} as const;

/** A distance as the receiver's screen shows it; or with two decimals at least where it is not on a step. */
function entryText(metres: number, timing: Receiver['timing'], isExact = false): string {
	if (timing.kind !== 'distance') return '';
	const unit = metresPerUnit[timing.shownIn];
	const step = timing.stepMetres / unit;
	// As many decimals as the step has; 0.03 m has two, 0.5 ft one, 1 ft none.
	const own = [0, 1, 2].find(digits => Math.abs(step - Number(step.toFixed(digits))) < 1e-6) ?? 3;
	return `${number(metres / unit, isExact ? Math.max(own, 2) : own)} ${timing.shownIn}`;
}
