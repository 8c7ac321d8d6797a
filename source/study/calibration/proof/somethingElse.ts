import type {BoxState} from '../../../profile/ask/boxState.ts';
import {finding} from '../../../profile/finding.ts';
import type {SlipCandidate} from './candidate.ts';
import type {Predictor} from './forecast.ts';

/** How often a level is off for a reason that no entry explains, and how far, dB. Common practice, no source. */
const share = 0.01;
const spreadDb = 5;

const raised = (state: BoxState, atom: string, db: number): BoxState => ({
	...state,
	besides: new Map(state.besides).set(atom, db),
});

/**
For each speaker and sub the explanation that stays when no entry explains its level: a cover, a knob, a moved meter.

Its amount is the one that fits best; what that freedom costs is in the prior, so that it does not outbid a mistake
that fits with no freedom at all.

@param residuals - With a moved master volume already taken out, dB.
@see MacKay, Information Theory, Inference, and Learning Algorithms (2003), chapter 28: the Occam factor.
*/
export function somethingElse(
	used: readonly Predictor[],
	residuals: readonly number[],
	sigmas: readonly number[],
): SlipCandidate[] {
	const single = new Map<string, number[]>();
	for (const [index, {atoms}] of used.entries()) {
		if (atoms.length === 1) single.set(atoms[0]!, [...(single.get(atoms[0]!) ?? []), index]);
	}

	return [...single].map(([atom, indices]): SlipCandidate => {
		let weights = 0;
		let sum = 0;
		for (const index of indices) {
			weights += 1 / sigmas[index]! ** 2;
			sum += residuals[index]! / sigmas[index]! ** 2;
		}

		const amountDb = sum / weights;
		const occam = -(amountDb ** 2) / (2 * spreadDb ** 2) - Math.log(spreadDb * Math.sqrt(weights));
		return {
			mistake: finding('doubt', 'slip-unexplained', [atom], {offDb: amountDb}),
			change: state => raised(state, atom, amountDb),
			logPrior: Math.log(share) + occam,
		};
	});
}
