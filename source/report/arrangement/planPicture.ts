import {fitCells} from '../fitCells.ts';
import {cellsFor, drawView} from '../plan/drawView.ts';
import {outlineOf} from '../plan/outline.ts';
import type {PlanScene} from '../plan/scene.ts';

/** The floor from above in a frame of cells, as large as it fits; lines of at most `columns` cells, at most `rows`. */
export function planPicture(scene: PlanScene, columns: number, rows: number): string[] {
	const {width, height} = outlineOf(scene, 'above');
	let dotsPerMetre = Math.min((columns * 2 - 2) / width, (rows * 4 - 2) / height);
	if (!Number.isFinite(dotsPerMetre) || dotsPerMetre < 2) return ['The plan needs a larger window.'];
	for (;;) {
		const [across, down] = cellsFor(outlineOf(scene, 'above'), dotsPerMetre);
		if (across <= columns && down <= rows) break;
		dotsPerMetre *= 0.97;
	}

	return drawView(scene, 'above', dotsPerMetre).lines.map(line =>
		fitCells(line.trimEnd(), columns).trimEnd(),
	);
}
