import type {Profile} from '../../../profile/types.ts';
import {candidates} from './candidates.ts';
import {findingsOf} from './findings.ts';
import type {Predictor} from './forecast.ts';
import {type JudgedRound, judgedRound} from './judgedRound.ts';
import {proofRemarks} from './proofRemarks.ts';
import type {Finding, ProofResult} from './proofResult.ts';
import {scenarios} from './scenarios.ts';
import {somethingElse} from './somethingElse.ts';

/** Residuals below so many standard uncertainties hint at nothing. */
const hint = 1.5;

/**
Levels near a cancellation, pressed together: how deep it is hangs on a few degrees of phase that nobody knows, so that
a sum far below its parts says that they cancel, and not how well.
*/
function belowFloor({floorDb}: Predictor): (levelDb: number) => number {
	if (floorDb === undefined) return levelDb => levelDb;
	return levelDb => 10 * Math.log10(10 ** (levelDb / 10) + 10 ** (floorDb / 10));
}

/** What explains the residuals of a round that is missed. */
function diagnose(profile: Profile, {prepared, held, shift}: JudgedRound): Finding[] {
	const shiftDb = shift?.value ?? 0;
	const limits = held.map(({limitDb}) => limitDb);
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
	return findingsOf(sorted, list, evidence, keys, shiftDb);
}

/**
Holds the second round of readings against what the settings in force should give. Where one is missed, the mistakes that
explain the residuals are named with their likelihood.
*/
export function prove(profile: Profile): ProofResult {
	const round = judgedRound(profile);
	const {prepared, verdict, readings, shift, missing, recorded, unjudged} = round;
	return {
		verdict,
		readings,
		...(shift && {masterShiftDb: shift}),
		findings: verdict === 'missed' ? diagnose(profile, round) : [],
		missing,
		...(recorded.length > 0 && {recorded}),
		unjudged,
		remarks: proofRemarks(profile, prepared, readings, unjudged, shift, verdict),
	};
}
