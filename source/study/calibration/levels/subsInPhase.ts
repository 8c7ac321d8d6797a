import {boxState, delayOf, isInverted} from '../../../profile/ask/boxState.ts';
import {lineOf} from '../../../profile/ask/lines.ts';
import {meterKey} from '../../../profile/ask/readings.ts';
import {settingsInForce} from '../../../profile/ask/settings.ts';
import {usualSubBand} from '../../../profile/practice.ts';
import {combinedLevelDb, meanCosine} from '../../../science/acoustics/together.ts';
import type {LevelContext} from './levels.ts';

/** Below this share of full addition the reading of all together says too little about how they add up in phase. */
const leastLikeness = 0.3;

/**
What the subs will gain together once their delays are set, because they were read together while they arrived apart.

The reading's part that is due to addition grows as the mean cosine of the lags over the band does; subs behind outputs
of their own end without a lag, those on one output keep theirs.

@param ids - Subs, each with a level.
@param levelsDb - Shape (ids), each alone under the common gain of the reading of all, dB.
@param togetherDb - What they made together, dB.
@param arrivalsMs - Of subs without any delay dialled in, ms.
@returns dB to add to what was read; 0 where lags, delays in force or a common phase are unknown.
*/
export function gainOfAlignment(
	{profile, observations}: LevelContext,
	seat: string,
	ids: readonly string[],
	levelsDb: readonly number[],
	togetherDb: number,
	arrivalsMs: ReadonlyMap<string, number>,
): number {
	const readings = observations.meter.get(meterKey(seat, [...ids].sort().join('+'))) ?? [];
	const [first] = readings;
	const set = first && settingsInForce(profile, first);
	const isOne = readings.every(reading => settingsInForce(profile, reading) === set);
	if (!set || !isOne || ids.some(id => !arrivalsMs.has(id))) return 0;
	const state = boxState(profile, set);
	const lines = ids.map(id => lineOf(profile, id));
	// Polarity that differs is a question for the blend.
	if (lines.some(line => isInverted(state, line) !== isInverted(state, lines[0]!))) return 0;
	const {fromHertz, toHertz} = first?.signal?.kind === 'pink' ? first.signal : usualBand;
	const at = ids.map((id, index) => arrivalsMs.get(id)! + delayOf(state, lines[index]!));
	const before = (i: number, j: number) => meanCosine(fromHertz, toHertz, at[i]! - at[j]!);
	const isJoined = (i: number, j: number) =>
		lines[i]!.output === lines[j]!.output && lines[i]!.channel === lines[j]!.channel;
	const after = (i: number, j: number) => (isJoined(i, j) ? before(i, j) : 1);

	const power = (likeness: typeof before) => 10 ** (combinedLevelDb(levelsDb, likeness) / 10);
	const energy = power(() => 0);
	const crossBefore = power(before) - energy;
	const crossAfter = power(after) - energy;
	if (crossBefore < leastLikeness * (power(() => 1) - energy)) return 0;
	const share = (10 ** (togetherDb / 10) - energy) / crossBefore;
	if (share <= 0) return 0;
	return 10 * Math.log10(energy + share * crossAfter) - togetherDb;
}

const usualBand = usualSubBand as Extract<typeof usualSubBand, {kind: 'pink'}>;
