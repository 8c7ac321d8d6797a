import type {LengthUnit} from '../../profile/types.ts';
import {formatLength} from '../../profile/units/length.ts';
import type {RoomShape} from '../../study/room/shape.ts';
import type {Vector} from '../../study/survey/vectors.ts';

/** A place in tape terms: its distances to the nearer side wall and to the nearer of screen and back wall. */
export function placeInTapeTerms(
	[x, y]: Vector,
	{widthMetres, lengthMetres}: RoomShape,
	unit: LengthUnit,
): string {
	const length = (metres: number) =>
		formatLength(metres, unit, {stepMetres: unit.startsWith('ft') ? 0.0254 / 2 : 0.01});
	const side =
		x <= widthMetres / 2
			? `${length(x)} from the left wall`
			: `${length(widthMetres - x)} from the right wall`;
	const end =
		y <= lengthMetres / 2
			? `${length(y)} from the screen wall`
			: `${length(lengthMetres - y)} from the back wall`;
	return `${side}, ${end}`;
}
