import type {LengthUnit} from '../profile/types.ts';
import {cellWidth, fitCells} from './fitCells.ts';
import {cellsFor, drawView} from './plan/drawView.ts';
import {planLegend} from './plan/legend.ts';
import {elevationOf, outlineOf, type PlanView} from './plan/outline.ts';
import {roomText} from './plan/planText.ts';
import type {PlanScene} from './plan/scene.ts';

export {planText} from './plan/planText.ts';
export type {PlanPoint, PlanScene, RoomPoint} from './plan/scene.ts';

export type PlanOptions = {
	/** Cells and lines available. */
	readonly columns: number;
	readonly rows: number;
	readonly lengthUnit: LengthUnit;
};

type Arrangement = {
	readonly views: readonly PlanView[];
	readonly how: 'beside' | 'stacked';
	/** The same along both axes of both views. */
	readonly dotsPerMetre: number;
	/** Legend in the corner below the second view, or below everything. */
	readonly inset?: readonly string[];
	readonly beneath?: readonly string[];
};

/** Blank cells between two views. */
const gap = 3;
/** Below these scales marks and labels run into each other: with two views, and at all. */
const leastForTwo = 7;
const leastDotsPerMetre = 4;
const titles: Readonly<Record<PlanView, string>> = {
	above: 'From above',
	side: 'From the side',
	behind: 'From behind',
};

/**
The floor plan from above and from the side, at one true scale, with distances from the reference seat.
The views stand side by side or one above the other, whichever shows more. Where both do not fit, the view from
above stands alone and the text says so.

@returns Lines of at most `columns` cells, at most `rows` of them.
*/
export function drawPlan(scene: PlanScene, {columns, rows, lengthUnit}: PlanOptions): string[] {
	const head = fitCells(roomText(scene, lengthUnit), columns);
	const elevation = elevationOf(scene);
	// One line each for the room's size and for what the drawing leaves out.
	const free = rows - 2;
	const legend = planLegend(scene, lengthUnit, columns);
	const beneath = free - legend.length;
	const candidates = [
		insetLegend(scene, arrange(scene, ['above', elevation], 'beside', columns, free), columns, lengthUnit),
		...(['beside', 'stacked'] as const).map(how => {
			const arrangement = arrange(scene, ['above', elevation], how, columns, beneath);
			return {...arrangement, beneath: legend};
		}),
	].filter(candidate => candidate !== undefined);
	const alone: Arrangement = {...arrange(scene, ['above'], 'stacked', columns, beneath), beneath: legend};
	const both = widest(candidates);
	const best =
		both.dotsPerMetre >= leastForTwo ? both : alone.dotsPerMetre >= leastDotsPerMetre ? alone : undefined;
	const lines = best ? drawArrangement(scene, best) : ['The drawing needs a larger window.', ...legend];
	return [head, ...lines]
		.slice(0, Math.max(0, rows))
		.map(line => fitCells(line.trimEnd(), columns).trimEnd());
}

function arrange(
	scene: PlanScene,
	views: readonly PlanView[],
	how: Arrangement['how'],
	columns: number,
	rows: number,
): Arrangement {
	const outlines = views.map(view => outlineOf(scene, view));
	const [gatherAcross, gatherDown] = how === 'beside' ? [sum, largest] : [largest, sum];
	const across = gatherAcross(outlines.map(({width}) => width));
	const down = gatherDown(outlines.map(({height}) => height));
	// Each view is rounded up to whole cells, and each row of views has a title.
	const count = views.length;
	const cells = how === 'beside' ? columns - gap * (count - 1) - count : columns - 1;
	const lines = how === 'beside' ? rows - 2 : rows - 2 * count;
	const dotsPerMetre = Math.min((cells * 2) / across, (lines * 4) / down);
	return {views, how, dotsPerMetre: Number.isFinite(dotsPerMetre) ? dotsPerMetre : 0};
}

/** The same with the legend in the free corner below the second view, where it fits there. */
function insetLegend(
	scene: PlanScene,
	arrangement: Arrangement,
	columns: number,
	lengthUnit: LengthUnit,
): Arrangement | undefined {
	if (arrangement.dotsPerMetre < leastDotsPerMetre) return undefined;
	const [first, second] = arrangement.views.map(view =>
		cellsFor(outlineOf(scene, view), arrangement.dotsPerMetre),
	);
	const inset = planLegend(scene, lengthUnit, columns - first![0] - gap);
	return second![1] + 1 + inset.length <= first![1] ? {...arrangement, inset} : undefined;
}

function sum(values: readonly number[]): number {
	return values.reduce((total, value) => total + value, 0);
}

function largest(values: readonly number[]): number {
	return Math.max(...values);
}

function widest(arrangements: readonly Arrangement[]): Arrangement {
	return arrangements.reduce((best, next) => (next.dotsPerMetre > best.dotsPerMetre ? next : best));
}

function drawArrangement(scene: PlanScene, arrangement: Arrangement): string[] {
	const {views, how, dotsPerMetre, inset = [], beneath = []} = arrangement;
	const drawn = views.map(view => drawView(scene, view, dotsPerMetre));
	const blocks = drawn.map(({lines}, index) => [
		titles[views[index]!],
		...lines,
		...(index > 0 && inset.length > 0 ? ['', ...inset] : []),
	]);
	const unlabelled = [...new Set(drawn.flatMap(view => view.unlabelled))];
	const note = [
		views.length === 1 ? 'The view from the side needs a larger window.' : '',
		unlabelled.length > 0 ? `Not labelled in every view: ${unlabelled.join(', ')}` : '',
	].filter(Boolean);
	return [
		...(how === 'beside' ? beside(blocks) : blocks.flat()),
		...beneath,
		...(note.length > 0 ? [note.join(' ')] : []),
	];
}

function beside(blocks: ReadonlyArray<readonly string[]>): string[] {
	const height = Math.max(...blocks.map(block => block.length));
	const widths = blocks.map(block => Math.max(...block.map(line => cellWidth(line))));
	return Array.from({length: height}, (_, row) =>
		blocks.map((block, index) => fitCells(block[row] ?? '', widths[index]! + gap)).join(''),
	);
}
