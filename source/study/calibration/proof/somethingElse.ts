import type {BoxState} from '../../../profile/ask/boxState.ts';
import {nameOf} from '../../../profile/names.ts';
import type {Profile} from '../../../profile/types.ts';
import {inSignedDb} from '../words.ts';
import type {Candidate} from './candidates.ts';
import type {Predictor} from './predictor.ts';

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
	profile: Profile,
	used: readonly Predictor[],
	residuals: readonly number[],
	sigmas: readonly number[],
): Candidate[] {
	const single = new Map<string, number[]>();
	for (const [index, {atoms}] of used.entries()) {
		if (atoms.length === 1) single.set(atoms[0]!, [...(single.get(atoms[0]!) ?? []), index]);
	}

	return [...single].map(([atom, indices]): Candidate => {
		let weights = 0;
		let sum = 0;
		for (const index of indices) {
			weights += 1 / sigmas[index]! ** 2;
			sum += residuals[index]! / sigmas[index]! ** 2;
		}

		const amountDb = sum / weights;
		const occam = -(amountDb ** 2) / (2 * spreadDb ** 2) - Math.log(spreadDb * Math.sqrt(weights));
		const name = nameOf(profile, atom);
		return {
			mistake: {
				kind: 'something else',
				about: [atom],
				text: `${name}: ${inSignedDb(amountDb)} that no entry explains.`,
				check: `Read ${name} once more with the meter where it stood in the first round; look for a turned knob, a cover or a loose plug.`,
			},
			change: state => raised(state, atom, amountDb),
			logPrior: Math.log(share) + occam,
		};
	});
}
