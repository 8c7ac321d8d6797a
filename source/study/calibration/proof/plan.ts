import {type BoxState, boxState} from '../../../profile/ask/boxState.ts';
import {referenceSeat} from '../../../profile/ask/seats.ts';
import {settingsInForce, standingSettings} from '../../../profile/ask/settings.ts';
import {listed, nameOf} from '../../../profile/names.ts';
import type {Profile} from '../../../profile/types.ts';
import {settledByRecording} from './byRecording.ts';
import type {Predictor} from './forecast.ts';
import type {ProofPlanItem, UnpredictedReason} from './planItem.ts';
import {predictors} from './predictor.ts';
import {readingKey, roundOf, type Taken} from './rounds.ts';
import {subArrivals} from './subArrivals.ts';

/** Everything that the second round is held against. */
export type Prepared = {
	/** Settings that should be in force now. */
	readonly intended: BoxState;
	/** Settings that stood before them. */
	readonly former: BoxState;
	readonly predictors: readonly Predictor[];
	/** Readings that cannot be forecast, with the reason. */
	readonly unpredicted: ReadonlyMap<string, UnpredictedReason>;
	/** Second-round readings by the predictor's key. */
	readonly taken: ReadonlyMap<string, readonly Taken[]>;
	readonly items: readonly ProofPlanItem[];
};

/** What stood in the boxes before: the set found, else what most of the first round was read under. */
function formerState(profile: Profile): BoxState {
	const found = profile.settings?.findLast(({origin}) => origin === 'found');
	if (found) return boxState(profile, found);
	const first = profile.meter?.findLast(
		({round, inForce, setAside}) => round === 'first' && inForce && !setAside,
	);
	return boxState(profile, first && settingsInForce(profile, first));
}

/**
Predictions for every reading of the second round that the first gives ground for: at the reference seat, for the settings
are made for it, and wherever else a reading was taken.
*/
export function prepareProof(profile: Profile): Prepared {
	const decided = standingSettings(profile);
	const reference = referenceSeat(profile).id;
	const intended = boxState(profile, decided);
	const {predictors: found, unpredicted} = predictors(profile, intended, subArrivals(profile), reference);
	const taken = new Map<string, Taken[]>();
	for (const one of roundOf(profile, 'proof')) {
		const key = readingKey(one.atoms, one.seat, one.signal);
		taken.set(key, [...(taken.get(key) ?? []), one]);
	}

	const isWorthReading = ({key, seat}: Predictor) => seat === reference || taken.has(key);
	const items = found.filter(isWorthReading).map((predictor): ProofPlanItem => {
		const {key, atoms, seat, weighting, signal, shows, assumption, sigmaDb} = predictor;
		return {
			key,
			source: atoms,
			name: listed(atoms.map(atom => nameOf(profile, atom))),
			seat,
			seatName: profile.seats.find(({id}) => id === seat)?.name ?? seat,
			weighting,
			signal,
			predicted: {value: predictor.level(intended), sigma: sigmaDb},
			shows,
			taken: (taken.get(key) ?? []).reduce((sum, {count}) => sum + count, 0),
			...(assumption !== undefined && {assumption}),
		};
	});
	const settled = settledByRecording(profile, items);
	const closed = items.map(item => {
		const own = settled.get(item.key);
		return own ? {...item, settled: own} : item;
	});
	return {intended, former: formerState(profile), predictors: found, unpredicted, taken, items: closed};
}

/**
The readings to take in the second round, in the order of the first, each with what the meter should show.

Empty where no settings are stored or the first round holds nothing to forecast from.
*/
export function proofPlan(profile: Profile): ProofPlanItem[] {
	return standingSettings(profile) ? [...prepareProof(profile).items] : [];
}
