import {receiverOf} from '../../profile/ask/boxes.ts';
import type {Observations} from '../../profile/ask/readings.ts';
import {finding} from '../../profile/finding.ts';
import {assumedReceiver} from '../../profile/practice.ts';
import type {Profile} from '../../profile/types.ts';
import type {GeneralFinding} from './facts.ts';
import {standingKnown} from './levels/levelContext.ts';

/** What concerns the whole solution: assumptions made, and whether anything was measured at all. */
export function generalRemarks(
	profile: Profile,
	observations: Observations,
	has: {readonly hasArrivals: boolean; readonly hasLevels: boolean},
): GeneralFinding[] {
	const remarks: GeneralFinding[] = [];
	if (!has.hasArrivals && !has.hasLevels) remarks.push(finding('problem', 'nothing-measured', []));
	if (receiverOf(profile).isAssumed) {
		const {timing, trim} = assumedReceiver;
		const {stepDb, minimumDb, maximumDb} = trim;
		const facts = {stepMs: timing.stepMs, stepDb, minimumDb, maximumDb};
		remarks.push(finding('doubt', 'receiver-assumed', [], facts));
	}

	if (profile.air?.temperatureCelsius === undefined && has.hasArrivals)
		remarks.push(finding('note', 'temperature-assumed', []));
	const told = standingKnown(observations);
	if (has.hasLevels && told !== 'all')
		remarks.push(finding(told === 'none' ? 'note' : 'doubt', 'trims-assumed-zero', [], {told}));
	const {bassProcessor} = profile;
	const lost = (profile.subs ?? []).filter(
		({processorOutput}) => processorOutput !== undefined && !bassProcessor?.outputs.includes(processorOutput),
	);
	if (lost.length > 0) {
		const ids = lost.map(({id}) => id);
		remarks.push(finding('doubt', 'output-unknown', ids));
	}

	return remarks;
}
