import type {Profile} from '../../profile/types.ts';
import {benchOf} from './bench.ts';
import {suggestedHertz} from './blend/blendInputs.ts';
import {polarities} from './blend/polarities.ts';
import {recordedWish} from './blend/recordedWish.ts';
import {blendWish, withoutWish} from './blend/wish.ts';
import {allLevels} from './levels/allLevels.ts';
import {trims} from './levels/trims.ts';
import type {Parts} from './parts.ts';
import type {Solution} from './result.ts';
import {assembled} from './solution.ts';
import {arrivalsOf} from './timing/arrivals.ts';
import {timing} from './timing/delays.ts';

/**
Everything to dial in, from everything measured: timing, trims, crossovers and polarity, each as computed and as the
boxes take it, with its uncertainty and its reasons in words. What was not measured is left out and said.

What the blend has verified is a wish for arrivals, so that steps are chosen once, for all lines together.

@param parts - The costly parts, where they are at hand.
*/
export function solve(profile: Profile, parts: Parts): Solution {
	const bench = benchOf(profile, parts);
	const arrived = arrivalsOf(bench);
	const wish =
		recordedWish(profile, arrived.arrivalsMs) ??
		blendWish({
			profile,
			arrivalsMs: arrived.arrivalsMs,
			suggestedHertz: suggestedHertz(bench.crossovers),
		});
	const polarity = polarities(profile, wish);
	const relativeSpeedSigma = bench.air.sigma / bench.air.metresPerSecond;
	const timed = timing(profile, withoutWish(arrived.arrivals, wish), relativeSpeedSigma);
	const levels = allLevels(bench, arrived.arrivalsMs, wish?.subs);
	const trimmed = trims(profile, levels.mains, levels.subs.needs, bench.targetDb);
	return assembled(bench, {...arrived, wish, polarity, timed, levels, trimmed});
}
