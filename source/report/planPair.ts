import type {LengthUnit} from '../profile/types.ts';
import {cellWidth, fitCells} from './fitCells.ts';
import {cellsFor, drawView} from './plan/drawView.ts';
import {outlineOf} from './plan/outline.ts';
import {planText} from './plan/planText.ts';
import type {PlanScene} from './plan/scene.ts';
import {wrap} from './wrap.ts';

/** One of the two plans, with what stands above it. */
export type PlanSide = {readonly title: string; readonly scene: PlanScene};

export type PlanPairOptions = {
	/** Cells available. */
	readonly columns: number;
	/** Lines that one plan and its title may take. */
	readonly rows: number;
};

/** Blank cells between the two. */
const gap = 3;
/** Below this scale marks and labels run into each other; the plans then stand one under the other. */
const leastBeside = 7;
const least = 4;
/** A plan of fewer things shows nothing that words do not. */
const fewestPoints = 2;

/**
Two floor plans from above at one true scale: side by side where the width allows, else one under the other.

@returns Lines of at most `columns` cells; a sentence instead of a plan that has too few places to be drawn.
*/
export function drawPlanPair(sides: readonly [PlanSide, PlanSide], options: PlanPairOptions): string[] {
	const drawable = sides.filter(({scene}) => scene.points.length >= fewestPoints);
	const empty = sides.filter(side => !drawable.includes(side));
	const told = empty.flatMap(({title}) =>
		wrap(`${title}: no plan, too few distances are read.`, options.columns),
	);
	if (drawable.length === 0) return told;
	const beside = drawable.length === 2 && scaleFor(drawable, options, 'beside') >= leastBeside;
	const how = beside ? 'beside' : 'stacked';
	const dotsPerMetre = scaleFor(drawable, options, how);
	if (dotsPerMetre < least) return ['The plans need a larger window.', ...told];
	const drawn = drawable.map(({scene}) => drawView(scene, 'above', dotsPerMetre));
	const widths = drawn.map(({lines}) => Math.max(...lines.map(line => cellWidth(line.trimEnd()))));
	const blocks = drawable.map(({title}, index) => {
		const cells = beside ? widths[index]! : options.columns;
		return [...wrap(title, cells), ...drawn[index]!.lines.map(line => line.trimEnd())];
	});
	const unlabelled = [...new Set(drawn.flatMap(view => view.unlabelled))];
	return [
		...(beside
			? inRow(
					level(
						blocks,
						drawn.map(({lines}) => lines.length),
					),
					widths,
				)
			: blocks.flat()),
		...(unlabelled.length > 0 ? wrap(`Not labelled: ${unlabelled.join(', ')}`, options.columns) : []),
		...told,
	];
}

/** Both plans in words, for screen readers. */
export function planPairText(sides: readonly [PlanSide, PlanSide], lengthUnit: LengthUnit): string[] {
	return sides.flatMap(({title, scene}) => [`${title}.`, ...planText(scene, lengthUnit)]);
}

function scaleFor(
	sides: readonly PlanSide[],
	{columns, rows}: PlanPairOptions,
	how: 'beside' | 'stacked',
): number {
	const outlines = sides.map(({scene}) => outlineOf(scene, 'above'));
	const widths = outlines.map(({width}) => width);
	const across = how === 'beside' ? widths.reduce((sum, width) => sum + width, 0) : Math.max(...widths);
	const count = how === 'beside' ? sides.length : 1;
	const down = Math.max(...outlines.map(({height}) => height));
	let scale = Math.min(((columns - gap * (count - 1) - count) * 2) / across, ((rows - 2) * 4) / down);
	// Titles that wrap in a narrow plan take lines from the drawing.
	const taken = (dots: number) =>
		Math.max(
			...sides.map(({title}, index) => {
				const [cells, lines] = cellsFor(outlines[index]!, dots);
				return lines + wrap(title, how === 'beside' ? cells : columns).length;
			}),
		);
	while (scale >= least && taken(scale) > rows) scale *= 0.95;
	return Number.isFinite(scale) ? scale : 0;
}

/** Blank lines under the shorter title, so that both drawings begin on one line. */
function level(blocks: ReadonlyArray<readonly string[]>, drawn: readonly number[]): string[][] {
	const titles = blocks.map((block, index) => block.length - drawn[index]!);
	const most = Math.max(...titles);
	return blocks.map((block, index) => [
		...block.slice(0, titles[index]),
		...Array.from({length: most - titles[index]!}, () => ''),
		...block.slice(titles[index]),
	]);
}

function inRow(blocks: ReadonlyArray<readonly string[]>, widths: readonly number[]): string[] {
	const height = Math.max(...blocks.map(({length}) => length));
	return Array.from({length: height}, (_, row) =>
		blocks
			.map((block, index) => fitCells(block[row] ?? '', widths[index]! + gap))
			.join('')
			.trimEnd(),
	);
}
