import {meterSigmaOf} from '../../../profile/ask/readings.ts';
import {standingSettings} from '../../../profile/ask/settings.ts';
import type {Profile} from '../../../profile/types.ts';
import type {Predictor} from './forecast.ts';
import {limitOf, placeSigmaDb} from './limits.ts';
import {judgeLooks} from './looks.ts';
import {type MasterShift, masterShift} from './masterShift.ts';
import {type Prepared, prepareProof} from './plan.ts';
import type {ProofPlanItem} from './planItem.ts';
import type {ProofReading, ProofResult, UnjudgedReading} from './proofResult.ts';
import {isSub, type Taken} from './rounds.ts';

/** One prediction held against what was read, before a common shift is told apart from it. */
export type Held = {
	readonly predictor: Predictor;
	readonly readDb: number;
	readonly readSigmaDb: number;
	readonly predictedDb: number;
	readonly residual: number;
	/** Of meter, forecast and the meter's place. */
	readonly sigma: number;
	readonly limitDb: number;
	readonly verdict: ProofReading['verdict'];
};

/** Residuals of every look at one predicted reading, in the order in which they were taken. */
function lookResiduals(predictor: Predictor, readings: readonly Taken[], intended: Prepared['intended']) {
	return readings
		.flatMap(({state, looks}) => {
			// A reading that names other settings than those decided is held against what it names.
			const stood = state.channels.size > 0 ? state : intended;
			const predictedDb = predictor.level({...stood, masterDb: state.masterDb});
			return looks.map(({order, levelDb}) => ({order, levelDb, predictedDb}));
		})
		.sort((one, other) => one.order - other.order);
}

/** Every predicted reading that was taken, against its prediction: the looks that count, a shift taken out. */
function heldAgainst(profile: Profile, {predictors, taken, intended}: Prepared, shiftDb: number): Held[] {
	const meterSigma = meterSigmaOf(profile);
	return predictors.flatMap(predictor => {
		const readings = taken.get(predictor.key);
		if (!readings) return [];
		const looks = lookResiduals(predictor, readings, intended);
		const limitDb = limitOf(profile, predictor.signal, Math.hypot(meterSigma, predictor.sigmaDb));
		const {verdict, residualDb, count} = judgeLooks(
			looks.map(({levelDb, predictedDb}) => levelDb - predictedDb - shiftDb),
			limitDb,
		);
		const counted = looks.slice(-count);
		const mean = (of: (look: (typeof looks)[number]) => number) =>
			counted.reduce((sum, look) => sum + of(look), 0) / count;
		const readSigmaDb = meterSigma / Math.sqrt(count);
		return [
			{
				predictor,
				readDb: mean(({levelDb}) => levelDb),
				readSigmaDb,
				predictedDb: mean(({predictedDb}) => predictedDb),
				residual: residualDb + shiftDb,
				sigma: Math.hypot(readSigmaDb, predictor.sigmaDb, placeSigmaDb(predictor.signal)),
				limitDb,
				verdict,
			},
		];
	});
}

/** Second-round readings for which there is no forecast, each with the reason. */
function unjudgedOf({predictors, unpredicted, taken}: Prepared): UnjudgedReading[] {
	const judged = new Set(predictors.map(({key}) => key));
	return [...taken].flatMap(([key, [first]]) => {
		if (judged.has(key)) return [];
		const {atoms, seat, signal} = first!;
		return [{key, source: atoms, seat, signal, reason: unpredicted.get(key) ?? 'no first round'}];
	});
}

/** The shift that the mains have in common, from every look at each of them alone with noise. */
function shiftOf(profile: Profile, held: readonly Held[]): MasterShift | undefined {
	const mains = held.filter(
		({predictor: {atoms, signal}}) =>
			atoms.length === 1 && signal.kind === 'pink' && !isSub(profile, atoms[0]!),
	);
	return masterShift(
		mains.map(({residual}) => residual),
		mains.map(({sigma}) => sigma),
	);
}

/** The second round judged, before anybody asks why. */
export type JudgedRound = {
	readonly prepared: Prepared;
	readonly verdict: ProofResult['verdict'];
	readonly held: readonly Held[];
	readonly readings: readonly ProofReading[];
	readonly shift: MasterShift | undefined;
	readonly missing: readonly ProofPlanItem[];
	/** Closed by a recording, not read. */
	readonly recorded: readonly ProofPlanItem[];
	readonly unjudged: readonly UnjudgedReading[];
};

/**
Every reading of the second round against its prediction, and the verdict, without the search for what explains it.

What all mains have in common, by the master volume, is taken out first. A reading that is not clearly within its limit is
asked for again with the meter put down anew, and the mean decides. Met is a round of which every reading asked for was
read, judged and within; else it stays open.
*/
export function judgedRound(profile: Profile): JudgedRound {
	const prepared = prepareProof(profile);
	const hasSettings = standingSettings(profile) !== undefined;
	const unjudged = hasSettings ? unjudgedOf(prepared) : [];
	const first = hasSettings ? heldAgainst(profile, prepared, 0) : [];
	const missing = prepared.items.filter(({taken, settled}) => taken === 0 && !settled);
	const recorded = prepared.items.filter(({taken, settled}) => taken === 0 && settled);
	const shift = shiftOf(profile, first);
	const shiftDb = shift?.value ?? 0;
	const held = shift ? heldAgainst(profile, prepared, shiftDb) : first;
	const readings = held.map((one): ProofReading => {
		const item = prepared.items.find(({key}) => key === one.predictor.key)!;
		return {
			...item,
			predicted: {value: one.predictedDb, sigma: one.predictor.sigmaDb},
			read: {value: one.readDb, sigma: one.readSigmaDb},
			rawResidual: one.residual,
			residual: one.residual - shiftDb,
			sigma: one.sigma,
			tolerance: one.limitDb,
			verdict: one.verdict,
		};
	});
	return {
		prepared,
		verdict: verdictOf(readings, recorded, missing, unjudged),
		held,
		readings,
		shift,
		missing,
		recorded,
		unjudged,
	};
}

function verdictOf(
	readings: readonly ProofReading[],
	recorded: readonly unknown[],
	missing: readonly unknown[],
	unjudged: readonly unknown[],
): ProofResult['verdict'] {
	if (readings.length === 0 && recorded.length === 0) return 'none';
	if (readings.some(({verdict}) => verdict === 'missed')) return 'missed';
	const isOpen =
		missing.length > 0 || unjudged.length > 0 || readings.some(({verdict}) => verdict === 'again');
	return isOpen ? 'open' : 'met';
}
