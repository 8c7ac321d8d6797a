import {brailleCanvas} from '../braille.ts';
import {flatten, type Outline, outlineOf, type PlanView} from './outline.ts';
import {type LabelWish, placeLabels} from './placeLabels.ts';
import {type PlanPoint, type PlanScene, referencePoint} from './scene.ts';

/** One view as lines of braille, and the labels for which the drawing had no place. */
export type DrawnView = {readonly lines: readonly string[]; readonly unlabelled: readonly string[]};

/** Smallest error ellipse that is drawn: below this many dots it cannot be told from the mark. */
const leastEllipseDots = 2.5;
const aimPattern = [1, 3];
const trailPattern = [1, 1];

/** Cells that a view needs at a scale. */
export function cellsFor({width, height}: Outline, dotsPerMetre: number): [columns: number, rows: number] {
	return [Math.ceil((width * dotsPerMetre + 1) / 2), Math.ceil((height * dotsPerMetre + 1) / 4)];
}

/** Draws one view at a scale, in just the cells it needs. */
export function drawView(scene: PlanScene, view: PlanView, dotsPerMetre: number): DrawnView {
	const outline = outlineOf(scene, view);
	const canvas = brailleCanvas(...cellsFor(outline, dotsPerMetre));
	const dotsOf = ([across, down]: readonly [number, number]): [number, number] => [
		Math.round((across - outline.left) * dotsPerMetre),
		Math.round((down - outline.top) * dotsPerMetre),
	];
	for (const [from, to] of outline.lines) canvas.line(...dotsOf(from), ...dotsOf(to));
	if (view === 'above')
		for (const {left, right, near, far} of scene.taken ?? [])
			for (const [from, to] of [
				[
					[left, near],
					[right, near],
				],
				[
					[left, far],
					[right, far],
				],
				[
					[left, near],
					[left, far],
				],
				[
					[right, near],
					[right, far],
				],
			] as const)
				canvas.line(...dotsOf(from), ...dotsOf(to), trailPattern);

	const marks = new Set<string>();
	const wishes: LabelWish[] = [];
	const reference = referencePoint(scene);
	const points = scene.points.filter(point => Number.isFinite(point.x + point.y + point.z));
	for (const point of points.toSorted((a, b) => rank(a, reference) - rank(b, reference))) {
		const [x, y] = dotsOf(flatten(point, view));
		if (point.aim) canvas.line(x, y, ...dotsOf(flatten(point.aim, view)), aimPattern);
		if (point.before) {
			const [fromX, fromY] = dotsOf(flatten(point.before, view));
			canvas.line(x, y, fromX, fromY, trailPattern);
			if (point.isPlanned)
				for (const [dotX, dotY] of markDots({...point, isPlanned: false}, view, dotsPerMetre))
					canvas.dot(fromX + dotX, fromY + dotY);
		}

		if (point.ellipse && view === 'above') {
			const {majorMetres, minorMetres, angleDegrees} = point.ellipse;
			const major = majorMetres * dotsPerMetre;
			// The drawing's second axis runs down as y does, so the angle turns the other way on the screen.
			if (major >= leastEllipseDots) canvas.ellipse(x, y, major, minorMetres * dotsPerMetre, -angleDegrees);
		}

		for (const [dotX, dotY] of markDots(point, view, dotsPerMetre)) {
			canvas.dot(x + dotX, y + dotY);
			marks.add(`${(x + dotX) >> 1},${(y + dotY) >> 2}`);
		}

		wishes.push({text: point.label, x, y});
	}

	const unlabelled = placeLabels(canvas, wishes, marks);
	return {lines: canvas.lines(), unlabelled};
}

/** The screen and the reference seat are labelled first, then speakers, subs and the other seats. */
function rank(point: PlanPoint, reference: PlanPoint | undefined): number {
	if (point === reference) return 0;
	return {screen: 1, speaker: 2, sub: 3, seat: 4}[point.kind];
}

const hollow = {speaker: ['##', '##'], sub: ['####', '#..#', '####'], seat: ['.##.', '#..#', '.##.']};
const filled = {speaker: ['##', '##'], sub: ['####', '####', '####'], seat: ['.##.', '####', '.##.']};

/** Dots of a point's mark: a filled block for a speaker, a frame for a sub, a ring for a seat, a bar for the picture. */
function markDots(point: PlanPoint, view: PlanView, dotsPerMetre: number): Array<[number, number]> {
	if (point.kind === 'screen') {
		const metres = view === 'side' ? point.heightMetres : point.widthMetres;
		const half = Math.round(((metres ?? 0) * dotsPerMetre) / 2) || 2;
		return Array.from({length: 2 * half + 1}, (_, index) =>
			view === 'side' ? [0, index - half] : [index - half, 0],
		);
	}

	const shape = (point.isPlanned ? filled : hollow)[point.kind];
	return shape.flatMap((line, row) =>
		[...line].flatMap(
			(character, column): Array<[number, number]> =>
				character === '#' ? [[column - (line.length >> 1), row - (shape.length >> 1)]] : [],
		),
	);
}
