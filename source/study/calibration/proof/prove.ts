import {meterSigmaOf} from '../../../profile/ask/readings.ts';
import {standingSettings} from '../../../profile/ask/settings.ts';
import type {Profile} from '../../../profile/types.ts';
import {candidates} from './candidates.ts';
import {findingsOf} from './findings.ts';
import type {Predictor} from './forecast.ts';
import {limitOf, placeSigmaDb} from './limits.ts';
import {judgeLooks} from './looks.ts';
import {type MasterShift, masterShift} from './masterShift.ts';
import {type Prepared, prepareProof} from './plan.ts';
import {proofRemarks} from './proofRemarks.ts';
import type {Finding, ProofReading, ProofResult, UnjudgedReading} from './proofResult.ts';
import {isSub, type Taken} from './rounds.ts';
import {scenarios} from './scenarios.ts';
import {somethingElse} from './somethingElse.ts';

/** Residuals below so many standard uncertainties hint at nothing. */
const hint = 1.5;

type Held = {
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

type Diagnosis = {readonly findings: (shiftDb: number) => Finding[]};

/**
Levels near a cancellation, pressed together: how deep it is hangs on a few degrees of phase that nobody knows, so that
a sum far below its parts says that they cancel, and not how well.
*/
function belowFloor({floorDb}: Predictor): (levelDb: number) => number {
	if (floorDb === undefined) return levelDb => levelDb;
	return levelDb => 10 * Math.log10(10 ** (levelDb / 10) + 10 ** (floorDb / 10));
}

function diagnose(
	profile: Profile,
	prepared: Prepared,
	held: readonly Held[],
	limits: readonly number[],
	shiftDb: number,
): Diagnosis {
	const {intended, former} = prepared;
	const used = held.map(({predictor}) => predictor);
	const residuals = held.map(({predictor, readDb, predictedDb}) => {
		const seen = belowFloor(predictor);
		return seen(readDb) - seen(predictedDb);
	});
	const sigmas = held.map(({sigma}) => sigma);
	const settled = residuals.map(residual => residual - shiftDb);
	const levels = used.map(predictor => belowFloor(predictor)(predictor.level(intended)));
	const effectOf = (change: (state: typeof intended) => typeof intended) => {
		const state = change(intended);
		return Float64Array.from(
			used,
			(predictor, index) => belowFloor(predictor)(predictor.level(state)) - levels[index]!,
		);
	};

	const all = [...candidates(profile, intended, former, used), ...somethingElse(used, settled, sigmas)]
		.map(candidate => ({candidate, effect: effectOf(candidate.change)}))
		// A mistake that none of the readings hints at need not be tried.
		.filter(({effect}) =>
			effect.some(
				(change, index) =>
					Math.abs(change) > sigmas[index]! / 4 &&
					Math.max(Math.abs(residuals[index]!), Math.abs(settled[index]!)) > hint * sigmas[index]!,
			),
		);
	const list = all.map(({candidate}) => candidate);
	const evidence = {
		residuals,
		sigmas,
		limits,
		entries: list.map(({mistake: {code, about}}, index) =>
			code.startsWith('slip-sub-delay') ? `delay of ${about.join()}` : `${index}`,
		),
		isSingle: used.map(({atoms}) => atoms.length === 1),
		effects: all.map(({effect}) => effect),
		logPriors: list.map(({logPrior}) => logPrior),
		together: (mistakes: readonly number[]) =>
			effectOf(state => mistakes.reduce((changed, mistake) => list[mistake]!.change(changed), state)),
	};
	const sorted = scenarios(evidence);
	const keys = used.map(({key}) => key);
	return {findings: db => findingsOf(sorted, list, evidence, keys, db)};
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

/**
Holds the second round of readings against what the settings in force should give.

What all mains have in common, by the master volume, is taken out first. A reading that is not clearly within its limit is
asked for again with the meter put down anew, and the mean decides. Where one is missed, the mistakes that explain the
residuals are named with their likelihood. Met is a round of which every reading asked for was read, judged
and within; else it stays open.
*/
export function prove(profile: Profile): ProofResult {
	const prepared = prepareProof(profile);
	const hasSettings = standingSettings(profile) !== undefined;
	const unjudged = hasSettings ? unjudgedOf(prepared) : [];
	const first = hasSettings ? heldAgainst(profile, prepared, 0) : [];
	const missing = prepared.items.filter(({taken}) => taken === 0);
	if (first.length === 0) {
		const remarks = proofRemarks(profile, prepared, [], unjudged, undefined, 'none');
		return {verdict: 'none', readings: [], findings: [], missing, unjudged, remarks};
	}

	const shift = shiftOf(profile, first);
	const shiftDb = shift?.value ?? 0;
	const held = shift ? heldAgainst(profile, prepared, shiftDb) : first;
	const isMissed = held.some(({verdict}) => verdict === 'missed');
	const limits = held.map(({limitDb}) => limitDb);
	const findings: Finding[] = isMissed
		? diagnose(profile, prepared, held, limits, shiftDb).findings(shiftDb)
		: [];
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
	const isOpen =
		missing.length > 0 || unjudged.length > 0 || readings.some(({verdict}) => verdict === 'again');
	const verdict = isMissed ? 'missed' : isOpen ? 'open' : 'met';
	return {
		verdict,
		readings,
		...(shift && {masterShiftDb: shift}),
		findings,
		missing,
		unjudged,
		remarks: proofRemarks(profile, prepared, readings, unjudged, shift, verdict),
	};
}
