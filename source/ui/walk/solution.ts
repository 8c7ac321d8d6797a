import {mostSeriousFirst} from '../../profile/finding.ts';
import type {Profile} from '../../profile/types.ts';
import {formatEntry} from '../../report/entryText.ts';
import {sentenceOf} from '../../report/said/said.ts';
import {type SolutionRow, solutionRows} from '../../report/solutionRows.ts';
import type {Solution} from '../../study/calibration/result.ts';
import {solve} from '../../study/calibration/solve.ts';
import {derived} from '../derived.ts';
import {costlyParts} from './costlyParts.ts';
import {lengthUnitOf} from './lengthUnits.ts';
import {measuredOf} from './measured.ts';
import {sayFor} from './sayFor.ts';

/** The solution of a profile. Keys that only move or type cost nothing here. */
export const solutionOf: (profile: Profile) => Solution = derived(
	{measured: measuredOf, parts: costlyParts},
	({measured, parts}) => solve(measured, parts),
);

/** Rows of the settings table for a profile, with what moved since `previous` told in words. */
export function rowsOf(profile: Profile, previous: Profile | undefined): SolutionRow[] {
	const timing = profile.receiver?.timing;
	return solutionRows(withoutMissing(solutionOf(profile)), {
		lengthUnit: lengthUnitOf(profile),
		say: sayFor(profile),
		previous: previous && solutionOf(previous),
		subNames: Object.fromEntries((profile.subs ?? []).map(({id, name}) => [id, name])),
		formatEntry: timing?.kind === 'distance' ? metres => formatEntry(metres, timing) : undefined,
	});
}

/** The walk itself asks for what is missing; the table says only what the readings say. */
function withoutMissing(solution: Solution): Solution {
	return {
		...solution,
		channels: solution.channels.map(channel => ({
			...channel,
			remarks: channel.remarks.filter(isAboutReadings),
		})),
	};
}

function isAboutReadings({code}: {readonly code: string}): boolean {
	return code !== 'distance-missing' && code !== 'level-missing';
}

/** The row of the table that a channel's or sub's readings move. */
export function rowIdOf(profile: Profile, source: string | undefined): string | undefined {
	const sub = profile.subs?.find(({id}) => id === source);
	if (!sub) return source;
	return profile.bassProcessor && sub.processorOutput ? `output:${sub.processorOutput}` : sub.fedBy;
}

/** What the settings say of a channel or sub that was just read: the most serious remark that can be acted on. */
export function adviceOn(profile: Profile, source: string | undefined): string | undefined {
	if (!source) return undefined;
	const solution = solutionOf(profile);
	const found = [...solution.channels, ...solution.subs].find(({id}) => id === source);
	// A sub far off is turned first of all: that is said as soon as it was read.
	const farOff = solution.remarks.filter(({code, about}) => code === 'sub-far-off' && about[0] === source);
	const remarks = [...(found?.remarks ?? []), ...farOff].filter(
		remark => remark.kind !== 'note' && isAboutReadings(remark),
	);
	const [first] = mostSeriousFirst(remarks);
	return first && sentenceOf(first, sayFor(profile));
}
