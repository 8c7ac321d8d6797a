import {finding} from '../../profile/finding.ts';
import type {Profile} from '../../profile/types.ts';
import {cablesOf} from './cables.ts';
import {checkCables} from './check.ts';
import type {WiringFinding} from './facts.ts';
import {connectingOrder} from './order.ts';
import {powerBudget} from './power.ts';
import type {Positions, WiringResult} from './result.ts';
import {checkSeparation} from './separation.ts';
import {purchaseTotals} from './totals.ts';

/**
The wiring of a profile: every cable with length, conductor and label, the order to connect in, what to buy,
what hangs on each outlet, and everything that is wrong or doubtful.

@param positions - Where speakers and subs stand in the room frame, metres; empty where the tape has not told yet.
*/
export function wiring(profile: Profile, positions: Positions = new Map()): WiringResult {
	const cables = cablesOf(profile, positions);
	const {outlets, remarks: powerRemarks} = powerBudget(profile);
	return {
		cables,
		order: connectingOrder(cables),
		totals: purchaseTotals(cables),
		outlets,
		remarks: [
			...checkCables(cables, profile, positions),
			...checkSeparation(profile),
			...powerRemarks,
			...unknownLengths(cables),
		],
	};
}

function unknownLengths(cables: WiringResult['cables']): WiringFinding[] {
	const unknown = cables.filter(({cutMetres, done}) => cutMetres === undefined && !done);
	if (unknown.length === 0) return [];
	return [finding('advice', 'lengths-unknown', [], {unknown: unknown.length, of: cables.length})];
}
