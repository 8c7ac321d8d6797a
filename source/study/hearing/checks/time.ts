import {finding} from '../../../profile/finding.ts';
import type {Stretch} from '../clock.ts';
import type {HearingFinding} from '../facts.ts';

/** Samples lost, or a link that wanders, show from here on, ms. */
const leastJumpMs = 0.1;
/** Less alike, and the lag of the two is noise. */
const alikeFrom = 0.85;

/**
Time that does not run evenly: samples that a recorder dropped shift every line after them, a wireless link shifts its
own alone.
*/
export function timeFindings(all: readonly Stretch[]): HearingFinding[] {
	const stretches = all.filter(({likeness}) => likeness > alikeFrom);
	const jumped = stretches.filter(({ms}) => Math.abs(ms) > leastJumpMs);
	if (jumped.length === 0) return [];
	const dropped = droppedIn(stretches, jumped);
	if (dropped) return [dropped];
	return [...new Set(jumped.map(({channel}) => channel))].map(about => {
		const own = jumped.filter(({channel}) => channel === about).map(({ms}) => Math.abs(ms));
		return finding('problem', 'heard-wanders', [about], {ms: Math.max(...own)});
	});
}

/** One moment that lies in every stretch that jumped, by the same, and in none that did not. */
function droppedIn(stretches: readonly Stretch[], jumped: readonly Stretch[]): HearingFinding | undefined {
	const sizes = jumped.map(({ms}) => ms);
	const mean = sizes.reduce((sum, ms) => sum + ms, 0) / sizes.length;
	if (sizes.some(ms => Math.abs(ms - mean) > 0.25 * Math.abs(mean))) return undefined;
	let from = Math.max(...jumped.map(({fromSeconds}) => fromSeconds));
	let to = Math.min(...jumped.map(({toSeconds}) => toSeconds));
	const steady = stretches.filter(stretch => !jumped.includes(stretch));
	// Steady stretches rule out all that lies within them.
	for (const {fromSeconds, toSeconds} of steady) {
		if (fromSeconds <= from && toSeconds > from) from = Math.min(to, toSeconds);
		if (toSeconds >= to && fromSeconds < to) to = Math.max(from, fromSeconds);
	}

	if (to <= from) return undefined;
	return finding('problem', 'heard-samples-dropped', [], {ms: mean, fromSeconds: from, toSeconds: to});
}
