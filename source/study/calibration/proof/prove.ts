import {meterSigmaOf} from '../../../profile/ask/readings.ts';
import {standingSettings} from '../../../profile/ask/settings.ts';
import type {Profile} from '../../../profile/types.ts';
import {candidates} from './candidates.ts';
import {findingsOf} from './findings.ts';
import {masterShift} from './masterShift.ts';
import {type Prepared, prepareProof} from './plan.ts';
import type {Predictor} from './predictor.ts';
import {proofRemarks} from './proofRemarks.ts';
import type {Finding, ProofReading, ProofResult} from './proofResult.ts';
import type {Taken} from './rounds.ts';
import {type Scenario, scenarios} from './scenarios.ts';
import {somethingElse} from './somethingElse.ts';
import {criticalValue} from './tolerance.ts';

/** Asked for where the profile sets no tolerance, dB. */
const usualToleranceDb = 1;
/** Share of clean rounds that may be called missed; half of what is allowed, for the noise is not quite normal. */
const falseAlarms = 0.005;

/** Residuals below so many standard uncertainties hint at nothing. */
const hint = 1.5;

type Held = {
	readonly predictor: Predictor;
	readonly readDb: number;
	readonly readSigmaDb: number;
	readonly predictedDb: number;
	readonly residual: number;
	readonly sigma: number;
};

/** Every predicted reading that was taken, against its prediction; repeats are averaged. */
function heldAgainst(profile: Profile, {predictors, taken, intended}: Prepared): Held[] {
	const meterSigma = meterSigmaOf(profile);
	return predictors.flatMap(predictor => {
		const readings = taken.get(predictor.key);
		if (!readings) return [];
		const count = readings.reduce((sum, reading) => sum + reading.count, 0);
		const mean = (of: (reading: Taken) => number) =>
			readings.reduce((sum, reading) => sum + of(reading) * reading.count, 0) / count;
		// A reading that names other settings than those decided is held against what it names.
		const stateOf = ({state}: Taken) => (state.channels.size > 0 ? state : intended);
		const readDb = mean(({levelDb}) => levelDb);
		const predictedDb = mean(reading =>
			predictor.level({...stateOf(reading), masterDb: reading.state.masterDb}, reading.addedDelayMs),
		);
		const readSigmaDb = meterSigma / Math.sqrt(count);
		return [
			{
				predictor,
				readDb,
				readSigmaDb,
				predictedDb,
				residual: readDb - predictedDb,
				sigma: Math.hypot(readSigmaDb, predictor.sigmaDb),
			},
		];
	});
}

type Diagnosis = {readonly best: Scenario; readonly findings: (shiftDb: number) => Finding[]};

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

	const all = [
		...candidates(profile, intended, former, used),
		...somethingElse(profile, used, settled, sigmas),
	]
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
		entries: list.map(({mistake: {kind, about}}, index) =>
			kind.startsWith('sub delay') ? `delay of ${about.join()}` : `${index}`,
		),
		isSingle: used.map(({atoms}) => atoms.length === 1),
		effects: all.map(({effect}) => effect),
		logPriors: list.map(({logPrior}) => logPrior),
		together: (mistakes: readonly number[]) =>
			effectOf(state => mistakes.reduce((changed, mistake) => list[mistake]!.change(changed), state)),
	};
	const sorted = scenarios(evidence);
	const keys = used.map(({key}) => key);
	return {best: sorted[0]!, findings: db => findingsOf(sorted, list, evidence, keys, db)};
}

/**
Holds the second round of readings against what the settings in force should give.

A moved master volume, one residual common to all, is taken out first. A residual is missed beyond the tolerance asked
for, and never before it is beyond what the noise of both rounds explains. Where one is missed, the mistakes that
explain the residuals are named with their likelihood.
*/
export function prove(profile: Profile): ProofResult {
	const toleranceDb = profile.target?.toleranceDb ?? usualToleranceDb;
	const prepared = prepareProof(profile);
	const held = standingSettings(profile) ? heldAgainst(profile, prepared) : [];
	const critical = criticalValue(Math.max(1, held.length), falseAlarms);
	const missing = prepared.items.filter(({taken}) => taken === 0);
	if (held.length === 0) {
		const remarks = proofRemarks(profile, prepared, [], undefined);
		return {
			verdict: 'none',
			toleranceDb,
			criticalValue: critical,
			readings: [],
			findings: [],
			missing,
			remarks,
		};
	}

	const limits = held.map(({sigma}) => Math.max(toleranceDb, critical * sigma));
	const isMissed = (shiftDb: number) =>
		held.some(({residual}, index) => !(Math.abs(residual - shiftDb) <= limits[index]!));
	let shift = masterShift(
		held.map(({residual}) => residual),
		held.map(({sigma}) => sigma),
	);
	let findings: Finding[] = [];
	if (isMissed(shift?.value ?? 0)) {
		const {best, findings: found} = diagnose(profile, prepared, held, limits, shift?.value ?? 0);
		shift = best.hasMaster ? {value: best.masterDb, sigma: best.masterSigmaDb} : undefined;
		findings = found(best.masterDb);
	}

	const shiftDb = shift?.value ?? 0;
	const readings = held.map((one, index): ProofReading => {
		const item = prepared.items.find(({key}) => key === one.predictor.key)!;
		const residual = one.residual - shiftDb;
		const size = Math.abs(residual);
		return {
			...item,
			predicted: {value: one.predictedDb, sigma: one.predictor.sigmaDb},
			read: {value: one.readDb, sigma: one.readSigmaDb},
			rawResidual: one.residual,
			residual,
			sigma: one.sigma,
			tolerance: limits[index]!,
			// What is no number is never met.
			verdict: size <= toleranceDb ? 'met' : size <= limits[index]! ? 'unclear' : 'missed',
		};
	});
	return {
		verdict: readings.some(({verdict}) => verdict === 'missed') ? 'missed' : 'met',
		toleranceDb,
		criticalValue: critical,
		readings,
		...(shift && {masterShiftDb: shift}),
		findings,
		missing,
		remarks: proofRemarks(profile, prepared, readings, shift),
	};
}
