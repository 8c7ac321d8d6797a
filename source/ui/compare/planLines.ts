import type {Profile} from '../../profile/types.ts';
import {planSides, trailText} from '../../report/diff/plans.ts';
import {drawPlanPair, planPairText} from '../../report/planPair.ts';
import {planChangeLines} from '../../report/said/planChange.ts';
import {sayIn} from '../../report/said/say.ts';
import {wrap} from '../../report/wrap.ts';
import type {ScreenLine} from '../parts/lines.tsx';
import {lengthUnitOf} from '../walk/lengthUnits.ts';
import {comparedPlans} from './comparedPlans.ts';

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
	const {diff, plans} = comparedPlans(older, newer);
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
