import {onsetOf} from './arrivals.ts';
import {lagBetween, type Stretch} from './clock.ts';
import type {Impulse} from './impulses.ts';

/** How far sweeps of one line that come twice are stretched, first to next, where they are alike. */
export function stretchesOf(impulses: readonly Impulse[]): Stretch[] {
	const stretches: Stretch[] = [];
	const full = impulses.filter(({sweep}) => sweep.law.toHertz > 4000);
	for (const [index, impulse] of full.entries()) {
		const next = full.slice(index + 1).find(({sweep}) => sweep.channel === impulse.sweep.channel);
		if (!next) continue;
		const onset = onsetOf(impulse, false);
		if (!onset) continue;
		const lag = lagBetween(impulse, next, onset.ms);
		stretches.push({
			channel: impulse.sweep.channel,
			fromSeconds: impulse.sweep.atSeconds,
			toSeconds: next.sweep.atSeconds,
			ms: lag.ms,
			likeness: lag.likeness,
		});
	}

	return stretches;
}
