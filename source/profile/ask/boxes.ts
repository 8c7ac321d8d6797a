import {assumedReceiver, usualReceiverSpeed} from '../practice.ts';
import type {Profile, Receiver} from '../types.ts';

/** The speed of sound that a receiver computes with, m/s: the one it states, else the usual. */
export function receiverSpeed(receiver: Profile['receiver']): number {
	const timing = receiver?.timing;
	return (timing?.kind === 'distance' ? timing.speedOfSoundMetresPerSecond : undefined) ?? usualReceiverSpeed;
}

export function receiverOf(profile: Profile): {readonly receiver: Receiver; readonly isAssumed: boolean} {
	return {
		receiver: profile.receiver ?? (assumedReceiver as Receiver),
		isAssumed: profile.receiver === undefined,
	};
}

/** A control of a box in the one unit that a computation uses: it can show `minimum + k · step` up to `maximum`. */
export type Control = {readonly step: number; readonly minimum: number; readonly maximum: number};

/**
The receiver's timing control as a delay, ms.
A distance entered tells the receiver how early to send: it is a negative delay of distance / the receiver's speed.
*/
export type TimingControl = {
	readonly kind: 'delay' | 'distance';
	readonly delay: Control;
	/** From the delay, ms, to what is typed in: ms or metres. */
	readonly toEntry: (delayMs: number) => number;
	/** Size of one millisecond in what is typed in: 1, or metres per millisecond. */
	readonly entryPerMs: number;
};

export function timingControl(receiver: Receiver): TimingControl {
	const {timing} = receiver;
	if (timing.kind === 'delay') {
		const delay = control(timing.stepMs, timing.minimumMs, timing.maximumMs);
		return {kind: 'delay', delay, toEntry: delayMs => delayMs, entryPerMs: 1};
	}

	const metresPerMs = receiverSpeed(receiver) / 1000;
	const metres = control(timing.stepMetres, timing.minimumMetres, timing.maximumMetres);
	return {
		kind: 'distance',
		delay: {
			step: metres.step / metresPerMs,
			minimum: -metres.maximum / metresPerMs,
			maximum: -metres.minimum / metresPerMs,
		},
		toEntry: delayMs => onGrid(metres, -delayMs * metresPerMs),
		entryPerMs: metresPerMs,
	};
}

/** A control whose maximum is one of its own steps, and whose limits are in order whatever the file says. */
export function control(step: number, minimum: number, maximum: number): Control {
	const steps = Math.max(0, Math.floor((maximum - minimum) / step + 1e-6));
	return {step, minimum, maximum: minimum + steps * step};
}

/** The control's point nearest to a value that is one but for binary crumbs. */
export function onGrid({step, minimum}: Control, value: number): number {
	return Number((minimum + Math.round((value - minimum) / step) * step).toPrecision(12));
}
