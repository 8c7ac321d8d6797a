import type {ProfileDiff} from '../../study/comparison/diff/profileDiff.ts';
import type {ComparedPlans} from '../../study/placement/comparePlans.ts';
import {markdownText} from '../markdownText.ts';
import {drawPlanPair, type PlanSide} from '../planPair.ts';
import {planChangeLines, type SayBoth} from '../said/planChange.ts';
import {wrap} from '../wrap.ts';

/** Lines of one plan on paper and in a terminal that scrolls. */
const planRows = 22;
/** Cells of a code block that no page cuts. */
const blockColumns = 80;

/** Both plans under the names of their profiles. */
export function planSides({older, newer, sameRoom}: ProfileDiff, plans: ComparedPlans): [PlanSide, PlanSide] {
	const title = (which: string, {name, date, room}: ProfileDiff['older']) =>
		`${which}: ${sameRoom ? '' : `${room}, `}${name} (${date})`;
	return [
		{title: title('Before', older), scene: plans.older},
		{title: title('After', newer), scene: plans.newer},
	];
}

/** What the dots between two places mean, where there are any. */
export function trailText({newer}: ComparedPlans): string[] {
	return newer.points.some(({before}) => before) ? ['Dots lead back to where a thing stood.'] : [];
}

/** The floor plans before and after, and what moved, as text. */
export function plansText(diff: ProfileDiff, plans: ComparedPlans, width: number, both: SayBoth): string {
	return [
		'Floor plans',
		...drawPlanPair(planSides(diff, plans), {columns: width, rows: planRows}),
		...trailText(plans),
		'',
		'Moved on the plan',
		...planChangeLines(plans, both).flatMap(line => wrap(line, width, '  - ')),
	].join('\n');
}

/** The same in Markdown, the drawing as a block of code. */
export function plansMarkdown(diff: ProfileDiff, plans: ComparedPlans, both: SayBoth): string {
	return [
		'## Floor plans',
		'',
		'```text',
		...drawPlanPair(planSides(diff, plans), {columns: blockColumns, rows: planRows}),
		'```',
		'',
		...trailText(plans).flatMap(line => [markdownText(line), '']),
		...planChangeLines(plans, both).map(line => `- ${markdownText(line)}`),
	].join('\n');
}
