import {control, onGrid, receiverOf, timingControl} from '../../profile/ask/boxes.ts';
import {mainChannels, receiverDelayMs} from '../../profile/ask/lines.ts';
import type {SetInForce} from '../../profile/ask/settings.ts';
import type {Profile} from '../../profile/types.ts';
import type {BlendGroup} from './apart/recordedBlend.ts';
import type {SubGroup} from './visit.ts';

/** How much later the receiver can still make every speaker, ms. */
export function mainsRoomMs(profile: Profile, set: SetInForce | undefined): number {
	const {maximum} = timingControl(receiverOf(profile).receiver).delay;
	const standing = mainChannels(profile).map(({id}) => receiverDelayMs(profile, set, id));
	return Math.max(0, Math.min(...standing.map(ms => (ms === undefined ? 0 : maximum - ms))));
}

/** A group's box: whole steps that it can add to what stands, within reach, and how it shows them. */
export function groupBox(
	profile: Profile,
	{box, at}: SubGroup,
	set: SetInForce | undefined,
	reachMs: number,
	earlierMs: number,
): Omit<BlendGroup, 'canTurn'> & {
	readonly standingMs: number | undefined;
	readonly entry: 'delay' | 'distance';
	readonly entryOf: (delayMs: number) => number;
	/** Whether the box itself can delay by so much. */
	readonly isWithin: (delayMs: number) => boolean;
} {
	const processor = profile.bassProcessor;
	const isProcessor = box === 'processor' && processor !== undefined;
	const timing = timingControl(receiverOf(profile).receiver);
	const own = isProcessor
		? control(processor.delay.stepMs, processor.delay.minimumMs, processor.delay.maximumMs)
		: timing.delay;
	const {step, minimum, maximum} = own;
	const standingMs = isProcessor
		? (set?.outputs?.[at]?.delayMs?.stepped ?? 0)
		: receiverDelayMs(profile, set, at);
	// Where nobody says what stands, every step within reach may be there.
	const standing = standingMs ?? (minimum + maximum) / 2;
	// Earlier than its box can, by so much as all speakers can be later.
	const low = Math.ceil((Math.max(-reachMs, minimum - standing - earlierMs) - 1e-9) / step);
	const high = Math.floor((Math.min(reachMs, maximum - standing) + 1e-9) / step);
	const steps = Array.from({length: Math.max(0, high - low + 1)}, (_, index) => (low + index) * step);
	return {
		addableMs: steps.includes(0) ? steps : [0, ...steps],
		standingMs,
		entry: isProcessor ? 'delay' : timing.kind,
		isWithin: delayMs => delayMs >= minimum - 1e-9 && delayMs <= maximum + 1e-9,
		entryOf: delayMs => (isProcessor ? onGrid(own, delayMs) : timing.toEntry(delayMs)),
	};
}
