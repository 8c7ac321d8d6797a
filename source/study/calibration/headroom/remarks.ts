import {finding} from '../../../profile/finding.ts';
import type {Profile} from '../../../profile/types.ts';
import type {HeadroomFinding} from './facts.ts';
import type {HeadroomResult, SourceHeadroom} from './result.ts';

/** What a headroom figure leaves out, and what it lacks. */
export function headroomRemarks(
	profile: Profile,
	sources: readonly SourceHeadroom[],
	first: HeadroomResult['first'],
	redirected: number,
): HeadroomFinding[] {
	const remarks: HeadroomFinding[] = [];
	for (const {source, missing} of sources) {
		if (missing.length === 0) continue;
		const needsTape = missing.some(lack => lack === 'distance' || lack === 'distances of the subs');
		remarks.push(finding('advice', 'headroom-unknown', [source], {missing, needsTape}));
	}

	const unstated = profile.channels.filter(
		({speaker}) => speaker?.sensitivityDb !== undefined && speaker.sensitivityFor === undefined,
	);
	if (unstated.length > 0) {
		remarks.push(
			finding(
				'doubt',
				'sensitivity-kind-unknown',
				unstated.map(({id}) => id),
			),
		);
	}

	if (!first) return [...remarks, finding('problem', 'headroom-nothing-known', [])];
	const {source, seat, masterVolumeDb} = first;
	const kind = masterVolumeDb < 0 ? 'advice' : 'note';
	remarks.push(
		finding(kind, 'first-to-give-out', [source], {seat, masterVolumeDb}),
		finding('note', 'sensitivity-assumes', []),
	);
	if (sources.some(each => each.source === 'subs'))
		remarks.push(finding('note', 'sub-load', [], {redirected}));
	if (sources.some(({crossoverHertz}) => crossoverHertz === 'full'))
		remarks.push(finding('doubt', 'full-range-excursion', []));
	return remarks;
}
