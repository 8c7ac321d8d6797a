import {finding} from '../../profile/finding.ts';
import {planes} from '../../profile/planes.ts';
import type {SurveyFinding} from './facts.ts';
import type {Unusable} from './observations.ts';
import type {SurveyInput} from './points.ts';
import {readingFindings} from './readingFindings.ts';
import type {NetworkResult} from './result.ts';
import type {Settled} from './settle.ts';
import type {Snooped} from './snooping.ts';

type Unsaid = Omit<NetworkResult, 'remarks'>;

function mirrorFindings({points}: Unsaid, {mirrors}: Settled): SurveyFinding[] {
	return mirrors.flatMap(({point, decidedBy}): SurveyFinding[] => {
		const about = [points[point]!.id];
		if (decidedBy === 'room') return [finding('note', 'tape-mirror-room', about)];
		if (decidedBy === 'side') return [finding('note', 'tape-mirror-side', about)];
		return decidedBy === 'nothing' ? [finding('doubt', 'tape-mirror', about)] : [];
	});
}

/** With more than this many, one finding for all is read and one for each is not. */
const mostSingle = 3;

function openFindings({undetermined}: Unsaid): SurveyFinding[] {
	if (undetermined.length > mostSingle) {
		const first = undetermined.flatMap(({missing}) => missing)[0];
		return [
			finding(
				'advice',
				'tape-open',
				undetermined.map(({id}) => id),
				{...(first && {begin: first})},
			),
		];
	}

	return undetermined.map(({id, status, missing, assumedBy}) =>
		finding(status === 'weak' ? 'doubt' : 'advice', `tape-${status}`, [id], {
			missing: missing.map(({to}) => to),
			...(assumedBy && {assumedBy}),
		}),
	);
}

function apartFindings({points}: Unsaid, {solved}: Settled): SurveyFinding[] {
	const parts = new Map<number, string[]>();
	for (const [index, part] of solved.components.entries()) {
		if (part < 0 || part === solved.home) continue;
		if (points[index]!.status !== 'undetermined') continue;
		parts.set(part, [...(parts.get(part) ?? []), points[index]!.id]);
	}

	return [...parts.values()].filter(ids => ids.length > 1).map(ids => finding('doubt', 'tape-apart', ids));
}

function uncheckedFindings({points}: Unsaid): SurveyFinding[] {
	const ids = points.filter(({status, isChecked}) => status === 'determined' && !isChecked).map(({id}) => id);
	return ids.length > 0 ? [finding('note', 'tape-unchecked', ids)] : [];
}

/** A chance of the global test below this makes the stated sigmas doubtful. */
const globalLimit = 0.001;

/** Everything that is to be said about a network, problems first. */
export function surveyFindings(
	{tape = []}: SurveyInput,
	result: Unsaid,
	unusable: readonly Unusable[],
	{fit: {settled}, isCutShort}: Snooped,
): SurveyFinding[] {
	if (tape.every(({setAside}) => setAside)) return [finding('advice', 'tape-none', [])];
	const used = result.readings.filter(({status}) => status === 'used');
	const onePlane = planes.find(
		plane => used.length > 2 && used.every(({from, to}) => from === plane || to === plane),
	);
	const isScattered = result.globalTest && result.globalTest.probability < globalLimit;
	const {conventions} = result;
	return [
		...readingFindings(tape, result.suspects, unusable),
		...(isCutShort ? [finding('problem', 'tape-many', [])] : []),
		...(isScattered && !isCutShort ? [finding('doubt', 'tape-global', [])] : []),
		...(onePlane ? [finding('doubt', 'tape-one-plane', [], {plane: onePlane})] : []),
		...apartFindings(result, settled),
		...openFindings(result),
		...mirrorFindings(result, settled),
		...uncheckedFindings(result),
		...(conventions.length > 0 ? [finding('note', 'tape-free', [], {conventions})] : []),
	];
}
