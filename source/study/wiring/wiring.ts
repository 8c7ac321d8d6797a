import type {Profile} from '../../profile/types.ts';
import type {Remark} from '../calibration/result.ts';
import {cablesOf} from './cables.ts';
import {checkCables} from './check.ts';
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

function unknownLengths(cables: WiringResult['cables']): Remark[] {
	const unknown = cables.filter(({cutMetres, done}) => cutMetres === undefined && !done);
	if (unknown.length === 0) return [];
	const text = `${unknown.length} of ${cables.length} cables have no length yet. Lay the tape along each route, or enter where the receiver stands and the runs are estimated.`;
	return [{kind: 'advice', code: 'lengths-unknown', text}];
}
