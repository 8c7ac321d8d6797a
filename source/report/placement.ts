import type {LengthUnit} from '../profile/types.ts';
import {formatLength} from '../profile/units/length.ts';
import type {AgainstPlan} from '../study/placement/againstPlan.ts';
import type {PlanPoints} from '../study/placement/planPoints.ts';
import type {Placement} from '../study/placement/result.ts';
import type {TapeMove} from '../study/placement/way.ts';
import type {NetworkResult} from '../study/survey/result.ts';
import {againstPlanLines} from './placement/againstPlanLines.ts';
import {aimRows} from './placement/aimRows.ts';
import {angleRows} from './placement/angleRows.ts';
import {screenLines} from './placement/screenLines.ts';
import {drawPlan, planText} from './plan.ts';
import {remarkLines} from './remarks.ts';
import {distinct, type Sayable} from './said/said.ts';
import type {Say} from './said/say.ts';
import {waysText} from './said/way.ts';
import {tableLines} from './table.ts';
import {wrap} from './wrap.ts';

export type PlacementOptions = {
	readonly lengthUnit: LengthUnit;
	readonly width: number;
	/** The ways to bring each speaker right, in the order in which they are to be shown. */
	readonly corrections: readonly (readonly TapeMove[])[];
	/** The plan, and whether it is drawn or told in words. */
	readonly plan: PlanPoints;
	readonly isPlanInWords: boolean;
	/** What was planned against what stands; empty where nothing was. */
	readonly againstPlan?: readonly AgainstPlan[];
	readonly say: Say;
};

/** Rows of the drawing: two views side by side in a terminal of usual height. */
const planRows = 22;

function section(title: string, lines: readonly string[]): string[] {
	return lines.length > 0 ? ['', title, ...lines] : [];
}

function positionLines({points}: NetworkResult, unit: LengthUnit, width: number): string[] {
	const known = points.filter(({status}) => status === 'determined' || status === 'weak');
	const rows = known.map(({label, at, worstSigmaMetres, isChecked}) => [
		label,
		...at.map(value => formatLength(value, unit)),
		// An uncertainty is shown to two digits at most, and never as nought.
		`±${formatLength(Math.max(worstSigmaMetres, 0.001), unit, {stepMetres: unit.startsWith('ft') ? 0.0254 / 8 : 0.001})}`,
		isChecked ? '' : 'not checked yet',
	]);
	return tableLines(
		[
			{title: 'thing', importance: 5, leastCells: 12},
			{title: 'from left wall', align: 'right', importance: 4},
			{title: 'from screen wall', align: 'right', importance: 4},
			{title: 'height', align: 'right', importance: 3},
			{title: 'worst', align: 'right', importance: 1},
			{title: 'check', importance: 2},
		],
		rows,
		width,
	);
}

/** The whole report on a placement as text: plan, places, angles, corrections, aiming, screen, remarks. */
export function placementText(
	result: NetworkResult,
	placement: Placement,
	options: PlacementOptions,
): string {
	const {lengthUnit, width, plan, isPlanInWords, say} = options;
	const names = say.name;
	const remarks = distinct<Sayable>([...result.remarks, ...placement.remarks]);
	const hasPlan = plan.points.length > 1;
	const planLines = !hasPlan
		? []
		: isPlanInWords
			? [planText(plan, lengthUnit)].flat()
			: drawPlan(plan, {columns: width, rows: planRows, lengthUnit});
	const ranked = options.corrections.flatMap(ways => wrap(waysText(ways, say), width, '  - '));
	return [
		...wrap(`Layout ${placement.layout}. Azimuth 0° is ${placement.ahead}, positive to the left.`, width),
		...section('Plan', planLines),
		...section('Places', positionLines(result, lengthUnit, width)),
		...section(`Angles at ${names(placement.seat)}`, angleRows(placement, names, lengthUnit, width)),
		...section('Planned and standing', againstPlanLines(options.againstPlan ?? [], names, lengthUnit, width)),
		...section('Corrections, smallest first', ranked),
		...section('Aiming at the reference seat', aimRows(placement, names, lengthUnit, width)),
		...section('Screen', screenLines(placement, names, lengthUnit, width)),
		...remarkLines(remarks, width, say),
	].join('\n');
}
