import type {Profile} from '../../../profile/types.ts';
import {situationOf} from '../dialIn/situation.ts';
import type {StopStatus} from '../progress.ts';
import {planOf, proofOf} from '../proof/proofOf.ts';

/** What comes next, in words, and the page that Enter goes to; without one Enter goes to the first open question. */
export type Next = {readonly text: string; readonly promptId?: string};

/** The next thing to do about a profile: what is needed, then typing in, then the second round, then the paper. */
export function nextOf(profile: Profile, status: readonly StopStatus[]): Next {
	const needed = status.find(({state, id}) => state === 'open' && id !== 'dialIn');
	if (needed) return {text: `Next: ${needed.name}. Enter goes to the first reading that is needed.`};
	const situation = situationOf(profile);
	const dialIn = {promptId: 'dialIn'};
	if (situation.kind === 'undecided')
		return {...dialIn, text: 'Next: Dial-in. Enter goes there to decide and type in the settings.'};
	if (situation.kind === 'stale')
		return {...dialIn, text: 'Next: Dial-in again. Enter goes there to decide on the new values.'};
	if (situation.kind === 'decided' && situation.items.some(({isDone}) => !isDone))
		return {...dialIn, text: 'Next: Dial-in. Enter goes to the first value that is not ticked.'};
	const planned = planOf(profile).length;
	const {verdict, missing, readings} =
		planned > 0 ? proofOf(profile) : {verdict: 'none', missing: [], readings: []};
	const proof = {promptId: 'proof'};
	if (verdict === 'missed') return {...proof, text: 'Next: Proof. Enter shows what probably went wrong.'};
	if (planned > 0 && missing.length > 0)
		return {...proof, text: 'Next: Proof. Enter goes to the second round.'};
	if (readings.some(reading => reading.verdict === 'again'))
		return {...proof, text: 'Next: Proof. Enter shows what is to be read again.'};
	return {text: 'Next: the cabinet door. w writes the page to print; keep it with the receiver.'};
}
