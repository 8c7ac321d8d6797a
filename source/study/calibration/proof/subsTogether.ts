import {type BoxState, delayOf, isInverted} from '../../../profile/ask/boxState.ts';
import {lineOf} from '../../../profile/ask/lines.ts';
import {leastCrossShare} from '../../../profile/practice.ts';
import type {Profile} from '../../../profile/types.ts';
import {combinedLevelDb, meanCosine} from '../../../science/acoustics/together.ts';
import {groupGain, isChangedAlike} from './alike.ts';
import type {Predictor} from './forecast.ts';
import {cleanLevel, meanOwnLevel, meterView, ownLevel, settingsDb} from './ownLevels.ts';
import type {UnpredictedReason} from './planItem.ts';
import {readingKey, type Taken} from './rounds.ts';

/** How far a coherent sum may be off in a room that nobody measured, dB. Common practice, no source. */
const assumedSumSigmaDb = 1.5;

/**
Forecast for several subs together with noise.

Each sub's own level, and for each pair the mean cosine of their lag over the band. How much of that is left in the
room is taken from a first-round reading of them together, where there is one; otherwise they count as adding up fully.

@param taken - First-round readings of these subs together; may be empty.
@param arrivalsMs - Of subs whose distance is known, ms.
@param like - Subs, seat, weighting and band of the forecast.
@returns `undefined` where a sub was not read alone; why not, where the sum cannot be told.
*/
export function subsTogether(
	profile: Profile,
	groups: ReadonlyMap<string, readonly Taken[]>,
	taken: readonly Taken[],
	like: Pick<Taken, 'atoms' | 'seat' | 'weighting' | 'signal'>,
	intended: BoxState,
	arrivalsMs: ReadonlyMap<string, number>,
): Predictor | UnpredictedReason | undefined {
	const {atoms, seat, weighting, signal} = like;
	if (signal.kind !== 'pink') return undefined;
	const shown = meterView(profile, {seat, weighting, signal});
	const lines = atoms.map(atom => lineOf(profile, atom));
	const own = atoms.map(atom => ownLevel(profile, groups.get(readingKey([atom], seat, signal)) ?? [], atom));
	if (own.some(level => !level)) return undefined;

	// Without distances the settings intended count as bringing the subs in together.
	const arrivals = atoms.map(atom => arrivalsMs.get(atom));
	const areKnown = arrivals.every(arrival => arrival !== undefined);
	const arrivalOf = (index: number) => (areKnown ? arrivals[index]! : -delayOf(intended, lines[index]!));
	const likenessIn = (state: BoxState) => (i: number, j: number) => {
		const at = (index: number) => arrivalOf(index) + delayOf(state, lines[index]!);
		const sign = isInverted(state, lines[i]!) === isInverted(state, lines[j]!) ? 1 : -1;
		return sign * meanCosine(signal.fromHertz, signal.toHertz, at(i) - at(j));
	};

	const levelsIn = (state: BoxState) =>
		own.map(
			(level, index) => level!.levelDb + settingsDb(profile, state, atoms[index]!, lines[index]!, signal),
		);

	// Share of the modelled likeness that the room left, from the first round; between −1 and 1.
	const shares = taken.flatMap(one => {
		const clean = cleanLevel(profile, one);
		if (!clean) return [];
		const levels = levelsIn(one.state);
		const energy = 10 ** (combinedLevelDb(levels, () => 0) / 10);
		const cross = 10 ** (combinedLevelDb(levels, likenessIn(one.state)) / 10) - energy;
		const full = levels.reduce(
			(sum, a, i) => levels.slice(0, i).reduce((inner, b) => inner + 2 * 10 ** ((a + b) / 20), sum),
			0,
		);
		// Too little likeness in the model says nothing about what the room leaves of it.
		if (Math.abs(cross) < leastCrossShare * full) return [];
		return [Math.max(-1, Math.min(1, (10 ** (clean.levelDb / 10) - energy) / cross))];
	});
	const share = shares.length === 0 ? 1 : shares.reduce((sum, one) => sum + one, 0) / shares.length;
	const rootSum = Math.hypot(...own.map(level => level!.sigmaDb)) / Math.sqrt(own.length);
	const modelled = (state: BoxState) => {
		const likeness = likenessIn(state);
		return combinedLevelDb(levelsIn(state), (i, j) => share * likeness(i, j));
	};

	// A reading taken with the subs as they are meant to be against each other tells their sum by itself.
	const direct = meanOwnLevel(
		taken.flatMap(one => {
			const clean = isChangedAlike(lines, one.state, intended) ? cleanLevel(profile, one) : undefined;
			if (!clean) return [];
			return [{...clean, levelDb: clean.levelDb + groupGain(intended, lines) - groupGain(one.state, lines)}];
		}),
	);
	const likeness = likenessIn(intended);
	// Nobody aims at subs that cancel: a sum so weak is told by a reading or not at all.
	const crossShare = meanOf(lines.flatMap((_, i) => lines.slice(0, i).map((__, j) => likeness(i, j))));
	if (!direct && crossShare < leastCrossShare) return 'weak cross term';
	const offsetDb = direct ? direct.levelDb - modelled(intended) : 0;
	return {
		key: readingKey(atoms, seat, signal),
		atoms,
		seat,
		weighting,
		signal,
		shows: 'subs together',
		...(!direct && shares.length === 0 && {assumption: 'in-phase' as const}),
		sigmaDb: direct
			? direct.sigmaDb
			: Math.hypot(rootSum, shares.length === 0 ? assumedSumSigmaDb : taken[0]!.sigmaDb / crossShare),
		level: (state: BoxState) => shown(modelled(state) + offsetDb),
	};
}

const meanOf = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
