import {sweepTime} from '../../science/signal/sweep.ts';
import type {OnsetFound} from './arrivals.ts';
import {lagBetween, type Stretch} from './clock.ts';
import type {Impulse} from './impulses.ts';

/** How far sweeps of one line that come twice are stretched, first to next, where they are alike. */
export function stretchesOf(
	impulses: readonly Impulse[],
	onsetOf: (impulse: Impulse) => OnsetFound | undefined,
): Stretch[] {
	const stretches: Stretch[] = [];
	const full = impulses.filter(({sweep}) => sweep.law.toHertz > 4000);
	for (const [index, impulse] of full.entries()) {
		const next = full.slice(index + 1).find(({sweep}) => sweep.channel === impulse.sweep.channel);
		if (!next) continue;
		const onset = onsetOf(impulse);
		if (!onset) continue;
		// A clock far off moves the second one out of the window: it is brought near by its own first sound.
		const second = onsetOf(next);
		if (!second) continue;
		const nearMs = second.ms - onset.ms;
		const moved = {...next, zero: next.zero + (nearMs * next.rateHz) / 1000};
		const lag = lagBetween(impulse, moved, onset.ms);
		stretches.push({
			channel: impulse.sweep.channel,
			fromSeconds: passesAt(impulse),
			toSeconds: passesAt(next),
			ms: lag.ms + nearMs,
			likeness: lag.likeness,
			isExact: impulse.sweep.law === next.sweep.law,
		});
	}

	return stretches;
}

/** Middle of the band in which sweeps are aligned, hertz. */
const alignedAtHertz = 2500;

/**
When a sweep passes the band that is looked at, seconds of the file: with the clock off by δ, what was played at t is found
δ·t late, and long and short sweeps pass at different times after their starts.
*/
function passesAt({sweep: {law, atSeconds}}: Impulse): number {
	return atSeconds + sweepTime(law, alignedAtHertz);
}
