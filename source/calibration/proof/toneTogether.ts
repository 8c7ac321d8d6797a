import type {Profile} from '../../profile/types.ts';
import {type BoxState, delayOf, isInverted, type Line, lineOf} from './boxState.ts';
import {combinedLevelDb, levelOverPhases, phaseWeights} from './combined.ts';
import {cleanLevel, meterView, ownLevel, passed, settingsDb} from './ownLevels.ts';
import type {Predictor} from './predictor.ts';
import {isSub, readingKey, type Taken} from './rounds.ts';

/**
Forecast for one main and its subs together at a tone.

Levels alone and together in the first round give the phase between them, up to its sign where only one delay was
tried; what stays open goes into the uncertainty of the forecast.

@param taken - First-round readings of them together at this tone.
@returns `undefined` where the main or the subs were not read alone at this tone, or more than one main sounded.
*/
export function blendPredictor(
	profile: Profile,
	groups: ReadonlyMap<string, readonly Taken[]>,
	taken: readonly Taken[],
	intended: BoxState,
): Predictor | undefined {
	const {atoms, seat, weighting, signal} = taken[0]!;
	if (signal.kind !== 'tone') return undefined;
	const subs = atoms.filter(atom => isSub(profile, atom));
	const mains = atoms.filter(atom => !isSub(profile, atom));
	if (mains.length !== 1 || subs.length === 0) return undefined;
	const shown = meterView(profile, {seat, weighting, signal});
	const main = mains[0]!;
	const mainLine = lineOf(profile, main);
	const subLines = subs.map(sub => lineOf(profile, sub));
	const takenOf = (of: readonly string[]) => groups.get(readingKey(of, seat, signal)) ?? [];
	const mainOwn = ownLevel(profile, takenOf([main]), main);
	const subOwn = subs.map(sub => ownLevel(profile, takenOf([sub]), sub));
	if (!mainOwn || subOwn.some(own => !own)) return undefined;

	const mainIn = (state: BoxState) => mainOwn.levelDb + settingsDb(profile, state, main, mainLine, signal);
	// A sub's reading by itself holds the low-pass of the crossover under which it was taken.
	const readUnder = takenOf([subs[0]!]).at(-1)!.state;
	const lowPassIn = (state: BoxState) =>
		passed(profile, state, main, signal, 'low').levelDb -
		passed(profile, readUnder, main, signal, 'low').levelDb;
	const filterPhase = (state: BoxState) =>
		passed(profile, state, main, signal, 'low').phase - passed(profile, state, main, signal, 'high').phase;
	const subsIn = (state: BoxState) =>
		lowPassIn(state) +
		combinedLevelDb(
			subOwn.map(
				(own, index) => own!.levelDb + settingsDb(profile, state, subs[index]!, subLines[index]!, signal),
			),
			() => 1,
		);
	const phaseFrom = (line: Line, from: BoxState, to: BoxState, addedMs: number) => {
		const movedMs = delayOf(to, line) - delayOf(from, line) + addedMs;
		const turn = isInverted(to, line) === isInverted(from, line) ? 0 : Math.PI;
		return (-2 * Math.PI * signal.hertz * movedMs) / 1000 + turn;
	};

	const addedPhase = (state: BoxState, addedDelayMs: number) =>
		phaseFrom(subLines[0]!, intended, state, addedDelayMs) -
		phaseFrom(mainLine, intended, state, 0) +
		filterPhase(state) -
		filterPhase(intended);
	const weights = phaseWeights(
		taken.flatMap(one => {
			const clean = cleanLevel(profile, one);
			if (!clean) return [];
			return [
				{
					levelDb: clean.levelDb,
					// The levels alone carry noise too; together they weigh about as much as the reading of both.
					sigmaDb: Math.hypot(clean.sigmaDb, mainOwn.sigmaDb, subOwn[0]!.sigmaDb),
					firstDb: mainIn(one.state),
					secondDb: subsIn(one.state),
					addedPhase: addedPhase(one.state, one.addedDelayMs),
				},
			];
		}),
	);
	const together = (state: BoxState, addedDelayMs: number) =>
		levelOverPhases(weights, mainIn(state), subsIn(state), addedPhase(state, addedDelayMs));
	return {
		key: readingKey(atoms, seat, signal),
		atoms,
		seat,
		weighting,
		signal,
		shows: 'blend',
		...(subs.length > 1 && {assumption: 'The subs count as one source at this tone.'}),
		sigmaDb: Math.hypot(
			together(intended, 0).sigma,
			mainOwn.sigmaDb / Math.SQRT2,
			subOwn[0]!.sigmaDb / Math.SQRT2,
		),
		level: (state, addedDelayMs = 0) => shown(together(state, addedDelayMs).value),
	};
}
