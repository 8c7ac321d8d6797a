import {decidedSettings} from '../../../profile/ask/settings.ts';
import type {Profile, SettingsSet} from '../../../profile/types.ts';
import {type JudgedRound, judgedRound} from '../../../study/calibration/proof/judgedRound.ts';
import {proofPlan} from '../../../study/calibration/proof/plan.ts';
import type {ProofPlanItem} from '../../../study/calibration/proof/planItem.ts';
import type {ProofResult} from '../../../study/calibration/proof/proofResult.ts';
import {prove} from '../../../study/calibration/proof/prove.ts';
import {derived} from '../../derived.ts';
import {measuredOf} from '../measured.ts';
import {solutionOf} from '../solution.ts';

/** The set that a second round is taken with: decided last, and at least partly typed in. */
export function provenSet(profile: Profile): SettingsSet | undefined {
	const decided = decidedSettings(profile);
	return decided?.origin === 'solved' && (decided.dialledIn ?? []).length === 0 ? undefined : decided;
}

/** The readings of the second round; none before a set was typed in. */
export const planOf: (profile: Profile) => readonly ProofPlanItem[] = derived(
	{measured: measuredOf},
	({measured}) => findPlan(measured),
);

/** Seats that the levels are made for; others only once they were read. */
function findPlan(profile: Profile): ProofPlanItem[] {
	if (!provenSet(profile)) return [];
	const {levelSeats} = solutionOf(profile);
	return proofPlan(profile).filter(({seat, taken}) => taken > 0 || levelSeats.includes(seat));
}

/** Each prediction against what was read, without the search for causes: quick enough for every reading. */
export const judgedOf: (profile: Profile) => JudgedRound = derived({measured: measuredOf}, ({measured}) =>
	judgedRound(measured),
);

/** Predictions against what was read, and what explains a miss. */
export const proofOf: (profile: Profile) => ProofResult = derived({measured: measuredOf}, ({measured}) =>
	prove(measured),
);
