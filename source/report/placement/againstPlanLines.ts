import type {LengthUnit} from '../../profile/types.ts';
import {formatLength} from '../../profile/units/length.ts';
import type {AgainstPlan} from '../../study/placement/againstPlan.ts';
import {wrap} from '../wrap.ts';

/** What was planned against what stands, in tape terms, a line a thing. */
export function againstPlanLines(
	things: readonly AgainstPlan[],
	name: (id: string) => string,
	unit: LengthUnit,
	width: number,
): string[] {
	const length = (metres: number) =>
		formatLength(Math.abs(metres), unit, {stepMetres: unit.startsWith('ft') ? 0.0254 / 2 : 0.01});
	return things.flatMap(({id, plannedAt, at, rightMetres, backMetres, offMetres, isGoodEnough}) =>
		wrap(
			`${name(id)}: planned ${length(plannedAt[0])} from the left wall and ${length(plannedAt[1])} from the screen wall, stands at ${length(at[0])} and ${length(at[1])}: ${length(rightMetres)} too far ${rightMetres < 0 ? 'left' : 'right'}, ${length(backMetres)} too far ${backMetres < 0 ? 'forward' : 'back'}${
				isGoodEnough === undefined
					? ''
					: isGoodEnough
						? `; ${length(offMetres)} in all, good enough`
						: `; ${length(offMetres)} in all, worth moving`
			}.`,
			width,
			'  - ',
		),
	);
}
