import type {BoxState} from '../../../profile/ask/boxState.ts';
import {lineOf} from '../../../profile/ask/lines.ts';
import {subsOf} from '../../../profile/ask/subs.ts';
import {deepestForecastDb, leastAboveBackgroundDb} from '../../../profile/practice.ts';
import type {Profile} from '../../../profile/types.ts';
import {backgroundAt} from '../levels/backgroundAt.ts';
import {alikePredictor} from './alikePredictor.ts';
import {bothPredictor} from './bothAtTone.ts';
import type {Predictor} from './forecast.ts';
import {meterView, ownLevel, settingsDb} from './ownLevels.ts';
import type {UnpredictedReason} from './planItem.ts';
import {isSub, readingKey, roundOf, signalText, type Taken} from './rounds.ts';
import {subsTogether} from './subsTogether.ts';
import {blendPredictor, subsAtTone} from './toneTogether.ts';

/** First-round readings of one source, seat and signal, whatever settings they were taken under. */
function grouped(taken: readonly Taken[]): Map<string, Taken[]> {
	const groups = new Map<string, Taken[]>();
	for (const one of taken) {
		const key = readingKey(one.atoms, one.seat, one.signal);
		groups.set(key, [...(groups.get(key) ?? []), one]);
	}

	return groups;
}

function singlePredictor(profile: Profile, key: string, taken: readonly Taken[]): Predictor | undefined {
	const {atoms, seat, weighting, signal} = taken.at(-1)!;
	const atom = atoms[0]!;
	const own = ownLevel(profile, taken, atom);
	if (!own) return undefined;
	const line = lineOf(profile, atom);
	const shown = meterView(profile, {seat, weighting, signal});
	return {
		key,
		atoms,
		seat,
		weighting,
		signal,
		shows: 'level',
		sigmaDb: own.sigmaDb,
		level: state => shown(own.levelDb + settingsDb(profile, state, atom, line, signal)),
	};
}

/** All subs together, where each was read alone and nobody read them together: worth a forecast all the same. */
function assumedTogether(
	profile: Profile,
	groups: ReadonlyMap<string, readonly Taken[]>,
	seat: string,
): string[][] {
	const bySignal = new Map<string, Set<string>>();
	for (const [first] of groups.values()) {
		const atom = first!.atoms[0]!;
		if (
			first!.atoms.length > 1 ||
			first!.seat !== seat ||
			!isSub(profile, atom) ||
			first!.signal.kind !== 'pink'
		)
			continue;
		const key = signalText(first!.signal);
		bySignal.set(key, (bySignal.get(key) ?? new Set()).add(atom));
	}

	const all = subsOf(profile)
		.map(({id}) => id)
		.sort();
	return [...bySignal.values()].some(atoms => atoms.size === all.length && all.length > 1) ? [all] : [];
}

/** What the first round lets forecast, and what it does not, with the reason. */
export type Forecasts = {
	readonly predictors: readonly Predictor[];
	readonly unpredicted: ReadonlyMap<string, UnpredictedReason>;
};

/** Why a forecast that can be made should not be, under the settings intended. */
function tooWeak(profile: Profile, predictor: Predictor, intended: BoxState): UnpredictedReason | undefined {
	const {seat, weighting, depthDb} = predictor;
	if (depthDb !== undefined && depthDb > deepestForecastDb) return 'hole';
	const background = backgroundAt(profile, seat, weighting);
	return background !== undefined && !(predictor.level(intended) - background > leastAboveBackgroundDb)
		? 'background'
		: undefined;
}

/**
A predictor for everything that the first round gives ground to forecast: each source alone, subs together, and one
main with its subs at a tone.

@param intended - The settings that should be in force in the second round.
@param arrivals - Of subs, ms.
@param seat - Where subs together are worth a forecast though nobody read them together.
*/
export function predictors(
	profile: Profile,
	intended: BoxState,
	arrivals: ReadonlyMap<string, number>,
	seat: string,
): Forecasts {
	const groups = grouped(roundOf(profile, 'first'));
	const found: Predictor[] = [];
	const unpredicted = new Map<string, UnpredictedReason>();
	const take = (
		key: string,
		made: Predictor | UnpredictedReason | undefined,
		otherwise?: UnpredictedReason,
	) => {
		const reason = typeof made === 'string' ? made : made ? tooWeak(profile, made, intended) : otherwise;
		if (reason) unpredicted.set(key, reason);
		else if (made && typeof made !== 'string') found.push(made);
	};

	for (const [key, taken] of groups) {
		const {atoms} = taken[0]!;
		const areSubs = atoms.every(atom => isSub(profile, atom));
		const isTone = taken[0]!.signal.kind === 'tone';
		if (atoms.length === 1) take(key, singlePredictor(profile, key, taken), 'background');
		else if (areSubs && !isTone)
			take(key, subsTogether(profile, groups, taken, taken[0]!, intended, arrivals), 'not read alone');
		else if (areSubs) take(key, subsAtTone(profile, key, taken, intended), 'subs changed');
		else if (isTone)
			take(
				key,
				blendPredictor(profile, groups, taken, intended) ?? bothPredictor(profile, key, taken, intended),
				'subs changed',
			);
		else take(key, alikePredictor(profile, key, taken, intended), 'settings changed');
	}

	for (const atoms of assumedTogether(profile, groups, seat)) {
		const alike = [...groups.values()].find(
			([first]) =>
				first!.seat === seat &&
				first!.atoms.length === 1 &&
				atoms.includes(first!.atoms[0]!) &&
				first!.signal.kind === 'pink',
		)!;
		const key = readingKey(atoms, seat, alike[0]!.signal);
		if (groups.has(key)) continue;
		take(key, subsTogether(profile, groups, [], {...alike[0]!, atoms}, intended, arrivals));
	}

	return {predictors: found, unpredicted};
}
