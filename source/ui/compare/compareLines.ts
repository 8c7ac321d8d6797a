import type {Profile} from '../../profile/types.ts';
import {movedOnPlan} from '../../report/diff/movedOnPlan.ts';
import {diffText} from '../../report/diff/text.ts';
import {cellWidth, fitCells} from '../../report/fitCells.ts';
import {sayIn} from '../../report/said/say.ts';
import {tableLines} from '../../report/table.ts';
import {wrap} from '../../report/wrap.ts';
import type {ScreenLine} from '../parts/lines.tsx';
import {lengthUnitOf} from '../walk/lengthUnits.ts';
import {rowsOf, solutionOf} from '../walk/solution.ts';
import {comparedPlans} from './comparedPlans.ts';
import {compareRows} from './compareRows.ts';

export type CompareOptions = {
	readonly columns: number;
	/** Every change with every part of its cause. */
	readonly isFull: boolean;
	/** Key that shows them. */
	readonly fullKey: string;
};

/** Two profiles side by side, what differs most first; then what changed in the room and why settings are others. */
export function compareLines(older: Profile, newer: Profile, options: CompareOptions): ScreenLine[] {
	const {columns, isFull, fullKey} = options;
	const lengthUnit = lengthUnitOf(newer);
	// Both sides in the unit of the newer one, so that equal lengths read alike.
	const side = (profile: Profile) => ({
		rows: rowsOf({...profile, lengthUnit}, undefined),
		solution: solutionOf(profile),
	});
	const rows = compareRows(side(older), side(newer));
	const same = rows.filter(({weight}) => weight === 0);
	const differing = rows.filter(({weight}) => weight > 0);
	const {diff, plans} = comparedPlans(older, newer);
	const say = sayIn(newer, lengthUnit);
	const text = diffText(diff, {
		lengthUnit,
		say,
		isFull,
		moved: movedOnPlan(plans, {older: sayIn(older, lengthUnit), newer: say}),
		width: columns,
		moreBy: fullKey,
	}).split('\n');
	// The title may take several lines; a blank one follows it.
	const titleLines = text.slice(0, text.indexOf(''));
	const rest = text.slice(titleLines.length);
	const lines: ScreenLine[] = [
		...titleLines.map((line): ScreenLine => ({text: line, style: 'strong'})),
		{text: ''},
		...tableOf(differing, columns),
		...(same.length > 0
			? wrap(`The same in both: ${same.map(({name}) => name).join(', ')}.`, columns, '  ').map(
					(line): ScreenLine => ({text: line, style: 'quiet'}),
				)
			: []),
		...rest.map((line): ScreenLine => ({text: line, style: isTitle(line) ? 'strong' : undefined})),
	];
	return lines.map(line =>
		cellWidth(line.text) > columns ? {...line, text: fitCells(line.text, columns).trimEnd()} : line,
	);
}

/** Titles of sections stand at the margin, everything else is set in. */
function isTitle(line: string): boolean {
	return line !== '' && !line.startsWith(' ');
}

function tableOf(rows: ReturnType<typeof compareRows>, columns: number): ScreenLine[] {
	if (rows.length === 0) return [];
	const table = tableLines(
		[
			{title: 'computed for', importance: 10, leastCells: 12},
			{title: 'to set', align: 'right', importance: 9},
			{title: 'trim', align: 'right', importance: 8},
			{title: 'distance', align: 'right', importance: 7},
			{title: 'level', align: 'right', importance: 6},
		],
		rows.map(({name, timing, trim, distance, level}) => [name, timing, trim, distance, level]),
		columns - 2,
	);
	return table.map(
		(text, index): ScreenLine => ({text: `  ${text}`, style: index === 0 ? 'quiet' : undefined}),
	);
}
