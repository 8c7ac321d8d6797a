import {isStale} from '../../../profile/ask/digest.ts';
import {standingSettings} from '../../../profile/ask/settings.ts';
import {finding} from '../../../profile/finding.ts';
import type {Profile} from '../../../profile/types.ts';
import type {NamedReading, ProofFinding} from './facts.ts';
import type {MasterShift} from './masterShift.ts';
import type {Prepared} from './plan.ts';
import type {ProofReading, ProofResult, UnjudgedReading} from './proofResult.ts';

const named = ({source, seat, signal}: NamedReading): NamedReading => ({source, seat, signal});

/** What a person should know of a second round besides its figures. */
export function proofRemarks(
	profile: Profile,
	{items}: Prepared,
	readings: readonly ProofReading[],
	unjudged: readonly UnjudgedReading[],
	shift: MasterShift | undefined,
	verdict: ProofResult['verdict'],
): ProofFinding[] {
	const remarks: ProofFinding[] = [];
	const decided = standingSettings(profile);
	if (!decided) remarks.push(finding('problem', 'proof-settings-missing', []));
	else if (items.length === 0) remarks.push(finding('problem', 'proof-first-round-missing', []));
	else if (readings.length === 0 && verdict === 'none')
		remarks.push(
			finding('problem', 'proof-second-round-missing', [], {
				count: items.length,
				set: decided.name ?? decided.id,
			}),
		);

	if (isStale(profile)) remarks.push(finding('doubt', 'proof-settings-stale', []));
	if (shift?.isMoved) remarks.push(finding('note', 'proof-master-moved', [], {shiftDb: shift.value}));
	const again = readings.filter(reading => reading.verdict === 'again');
	if (again.length > 0) remarks.push(finding('advice', 'proof-look-again', [], {readings: again.map(named)}));
	const left = items.filter(({taken, settled}) => taken === 0 && !settled);
	if (verdict !== 'none' && left.length > 0)
		remarks.push(finding('advice', 'proof-left-out', [], {readings: left.map(named)}));
	for (const reason of new Set(unjudged.map(one => one.reason)))
		remarks.push(
			finding('doubt', 'proof-unjudged', [], {
				readings: unjudged.filter(one => one.reason === reason).map(named),
				reason,
			}),
		);
	for (const assumption of new Set(items.flatMap(item => item.assumption ?? [])))
		remarks.push(finding('note', 'proof-assumption', [], {assumption}));
	if (verdict === 'met') remarks.push(finding('note', 'proof-not-found-by-meter', []));
	return remarks;
}
