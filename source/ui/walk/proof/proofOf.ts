import {decidedSettings} from '../../../profile/ask/settings.ts';
import type {Profile, SettingsSet} from '../../../profile/types.ts';
import {proofPlan} from '../../../study/calibration/proof/plan.ts';
import type {ProofPlanItem, ProofResult} from '../../../study/calibration/proof/proofResult.ts';
import {prove} from '../../../study/calibration/proof/prove.ts';
import {solutionOf} from '../solution.ts';

// Profiles are never changed in place, so what was found for one stays true for as long as it exists.
const plans = new WeakMap<Profile, readonly ProofPlanItem[]>();
const results = new WeakMap<Profile, ProofResult>();

/** The set that a second round is taken with: decided last, and at least partly typed in. */
export function provenSet(profile: Profile): SettingsSet | undefined {
	const decided = decidedSettings(profile);
	return decided?.origin === 'solved' && (decided.dialledIn ?? []).length === 0 ? undefined : decided;
}

/** The readings of the second round; none before a set was typed in. Computed once for a profile. */
export function planOf(profile: Profile): readonly ProofPlanItem[] {
	const found = plans.get(profile) ?? findPlan(profile);
	plans.set(profile, found);
	return found;
}

/** Seats that the levels are made for; others only once they were read. */
function findPlan(profile: Profile): ProofPlanItem[] {
	if (!provenSet(profile)) return [];
	const {levelSeats} = solutionOf(profile);
	return proofPlan(profile).filter(({seat, taken}) => taken > 0 || levelSeats.includes(seat));
}

/** Predictions against what was read. Computed once for a profile. */
export function proofOf(profile: Profile): ProofResult {
	const found = results.get(profile) ?? prove(profile);
	results.set(profile, found);
	return found;
}
