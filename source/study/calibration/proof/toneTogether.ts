import {type BoxState, delayOf, isInverted} from '../../../profile/ask/boxState.ts';
import {type Line, lineOf} from '../../../profile/ask/lines.ts';
import type {Profile} from '../../../profile/types.ts';
import {groupGain, groupTurn, isChangedAlike} from './alike.ts';
import {levelOverPhases, phaseWeights} from './combined.ts';
import type {Predictor} from './forecast.ts';
import {
	cleanLevel,
	meanOwnLevel,
	meterView,
	type OwnLevel,
	ownLevel,
	passed,
	settingsDb,
} from './ownLevels.ts';
import {isSub, readingKey, type Taken} from './rounds.ts';

/** A cancellation deeper than this below the energy sum is not told by its depth, dB. Common practice, no source. */
export const deepestDb = 10;

/**
Level of several subs as one source with all settings at zero.

@returns `undefined` where the settings intended change one sub against another: how they then add up at a tone is not
known from their sum before.
*/
function groupLevel(
	profile: Profile,
	taken: readonly Taken[],
	subs: readonly string[],
	intended: BoxState,
): OwnLevel | undefined {
	if (subs.length === 1) return ownLevel(profile, taken, subs[0]!);
	const lines = subs.map(sub => lineOf(profile, sub));
	return meanOwnLevel(
		taken.flatMap(one => {
			if (!isChangedAlike(lines, one.state, intended)) return [];
			const clean = cleanLevel(profile, one);
			return clean ? [{...clean, levelDb: clean.levelDb - groupGain(one.state, lines)}] : [];
		}),
	);
}

/**
Forecast for several subs sounding alone at a tone, as one source.

@returns `undefined` where the background drowns every reading, or one sub is changed against another.
*/
export function subsAtTone(
	profile: Profile,
	key: string,
	taken: readonly Taken[],
	intended: BoxState,
): Predictor | undefined {
	const {atoms, seat, weighting, signal} = taken.at(-1)!;
	if (signal.kind !== 'tone') return undefined;
	const {hertz} = signal;
	const own = groupLevel(profile, taken, atoms, intended);
	if (!own) return undefined;
	const lines = atoms.map(atom => lineOf(profile, atom));
	const shown = meterView(profile, {seat, weighting, signal});
	return {
		key,
		atoms,
		seat,
		weighting,
		signal,
		shows: 'blend',
		assumption: 'subs-as-one',
		sigmaDb: own.sigmaDb,
		level: state =>
			shown(own.levelDb + groupGain(intended, lines) + groupTurn(lines, intended, state, hertz).levelDb),
	};
}

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
	const subsOwn = groupLevel(profile, takenOf(subs), subs, intended);
	if (!mainOwn || !subsOwn) return undefined;

	const mainIn = (state: BoxState) => mainOwn.levelDb + settingsDb(profile, state, main, mainLine, signal);
	// A sub's reading by itself holds the low-pass of the crossover under which it was taken.
	const readUnder = takenOf(subs).at(-1)!.state;
	const lowPassIn = (state: BoxState) =>
		passed(profile, state, main, signal, 'low').levelDb -
		passed(profile, readUnder, main, signal, 'low').levelDb;
	const filterPhase = (state: BoxState) =>
		passed(profile, state, main, signal, 'low').phase - passed(profile, state, main, signal, 'high').phase;
	const subsIn = (state: BoxState) =>
		lowPassIn(state) +
		subsOwn.levelDb +
		groupGain(intended, subLines) +
		groupTurn(subLines, intended, state, signal.hertz).levelDb;
	const phaseFrom = (line: Line, from: BoxState, to: BoxState) => {
		const movedMs = delayOf(to, line) - delayOf(from, line);
		const turn = isInverted(to, line) === isInverted(from, line) ? 0 : Math.PI;
		return (-2 * Math.PI * signal.hertz * movedMs) / 1000 + turn;
	};

	const addedPhase = (state: BoxState) =>
		groupTurn(subLines, intended, state, signal.hertz).phase -
		phaseFrom(mainLine, intended, state) +
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
					sigmaDb: Math.hypot(clean.sigmaDb, mainOwn.sigmaDb, subsOwn.sigmaDb),
					firstDb: mainIn(one.state),
					secondDb: subsIn(one.state),
					addedPhase: addedPhase(one.state),
				},
			];
		}),
	);
	const together = (state: BoxState) =>
		levelOverPhases(weights, mainIn(state), subsIn(state), addedPhase(state));
	const apart = 10 * Math.log10(10 ** (mainIn(intended) / 10) + 10 ** (subsIn(intended) / 10));
	return {
		key: readingKey(atoms, seat, signal),
		atoms,
		seat,
		weighting,
		signal,
		shows: 'blend',
		floorDb: shown(apart - deepestDb),
		...(subs.length > 1 && {assumption: 'subs-as-one' as const}),
		depthDb: apart - together(intended).value,
		sigmaDb: Math.hypot(together(intended).sigma, mainOwn.sigmaDb / Math.SQRT2, subsOwn.sigmaDb / Math.SQRT2),
		level: state => shown(together(state).value),
	};
}
