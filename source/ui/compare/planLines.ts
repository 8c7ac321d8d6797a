import type {Profile} from '../../profile/types.ts';
import {planSides, trailText} from '../../report/diff/plans.ts';
import {drawPlanPair, planPairText} from '../../report/planPair.ts';
import {planChangeLines} from '../../report/said/planChange.ts';
import {sayIn} from '../../report/said/say.ts';
import {wrap} from '../../report/wrap.ts';
import {diffProfiles} from '../../study/comparison/diff/diffProfiles.ts';
import {comparePlans} from '../../study/placement/comparePlans.ts';
import {derived} from '../derived.ts';
import type {ScreenLine} from '../parts/lines.tsx';
import {lengthUnitOf} from '../walk/lengthUnits.ts';
import {tapedNetworkOf} from '../walk/sceneOf.ts';
import {solutionOf} from '../walk/solution.ts';

export type PlanLinesOptions = {
	readonly columns: number;
	/** Lines of the window, which one drawing is to fit into. */
	readonly rows: number;
	/** Both plans in sentences, for a screen reader. */
	readonly isInWords: boolean;
};

/** The floor plans of two profiles at one scale, and below them what moved and how far. */
export function planLines(
	older: Profile,
	newer: Profile,
	{columns, rows, isInWords}: PlanLinesOptions,
): ScreenLine[] {
	const {diff, plans} = madeOf(newer)(older);
	const sides = planSides(diff, plans);
	const unit = lengthUnitOf(newer);
	const plain = (text: string): ScreenLine => ({text});
	const moved = planChangeLines(plans, {older: sayIn(older, unit), newer: sayIn(newer, unit)}).flatMap(
		line => (isInWords ? [`  - ${line}`] : wrap(line, columns, '  - ')),
	);
	const changes: ScreenLine[] = [{text: 'Moved on the plan', style: 'strong'}, ...moved.map(plain)];
	if (isInWords) {
		return [...changes, {text: ''}, ...planPairText(sides, unit).map(plain)];
	}

	return [
		...drawPlanPair(sides, {columns, rows}).map(plain),
		...trailText(plans).map((text): ScreenLine => ({text, style: 'quiet'})),
		{text: ''},
		...changes,
	];
}

/** By the newer profile, what is found for an older one. A key that scrolls asks anew; adjusting both networks takes longer than a frame. */
const madeOf = derived({newer: (newer: Profile) => newer}, ({newer}) =>
	derived({older: (older: Profile) => older}, ({older}) => made(older, newer)),
);

function made(older: Profile, newer: Profile) {
	const solved = (profile: Profile) => ({profile, solution: solutionOf(profile)});
	const diff = diffProfiles(solved(older), solved(newer));
	const surveyed = (profile: Profile) => ({network: tapedNetworkOf(profile), screen: profile.screen});
	return {diff, plans: comparePlans(surveyed(older), surveyed(newer), diff)};
}
