import {type BoxState, delayOf, gainWithMaster, isInverted} from '../../../profile/ask/boxState.ts';
import type {Line} from '../../../profile/ask/lines.ts';

/** Gain that several lines have in common, as their mean, dB. */
export function groupGain(state: BoxState, lines: readonly Line[]): number {
	return lines.reduce((sum, line) => sum + gainWithMaster(state, line), 0) / lines.length;
}

/** Delays closer than this add up alike in the bass, ms: a hundredth of a period at 200 Hz. */
const sameMs = 0.05;
const sameDb = 0.05;

/** Whether two sets of settings differ for several lines only by what they have in common. */
export function isChangedAlike(
	lines: readonly Line[],
	from: BoxState,
	to: BoxState,
	withinMs = sameMs,
): boolean {
	const [first, ...others] = lines.map(line => ({
		gainDb: gainWithMaster(to, line) - gainWithMaster(from, line),
		delayMs: delayOf(to, line) - delayOf(from, line),
		isTurned: isInverted(to, line) !== isInverted(from, line),
	}));
	return others.every(
		({gainDb, delayMs, isTurned}) =>
			Math.abs(gainDb - first!.gainDb) < sameDb &&
			Math.abs(delayMs - first!.delayMs) < withinMs &&
			isTurned === first!.isTurned,
	);
}

/**
What a change of settings does to several subs that sound as one at a tone: the mean of what it does to each.

Of subs changed alike that is exact; of subs changed against each other it is what holds on average over how they add up.

@returns Level, dB, and phase, radians.
*/
export function groupTurn(
	lines: readonly Line[],
	from: BoxState,
	to: BoxState,
	hertz: number,
): {readonly levelDb: number; readonly phase: number} {
	let real = 0;
	let imaginary = 0;
	for (const line of lines) {
		const gainDb = gainWithMaster(to, line) - gainWithMaster(from, line);
		const turn = isInverted(to, line) === isInverted(from, line) ? 0 : Math.PI;
		const phase = (-2 * Math.PI * hertz * (delayOf(to, line) - delayOf(from, line))) / 1000 + turn;
		real += (10 ** (gainDb / 20) * Math.cos(phase)) / lines.length;
		imaginary += (10 ** (gainDb / 20) * Math.sin(phase)) / lines.length;
	}

	// Subs that cancel each other leave some sound in any room: 30 dB less and no more.
	const least = 10 ** (-30 / 20);
	return {
		levelDb: 20 * Math.log10(Math.max(least, Math.hypot(real, imaginary))),
		phase: Math.hypot(real, imaginary) < least ? 0 : Math.atan2(imaginary, real),
	};
}
