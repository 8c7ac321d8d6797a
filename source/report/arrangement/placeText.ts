import type {LengthUnit} from '../../profile/types.ts';
import {formatLength} from '../../profile/units/length.ts';
import type {Vector} from '../../study/survey/vectors.ts';

/** Along the floor; of an unknown size every place is told from the first wall. */
export type FloorSize = {readonly widthMetres: number; readonly lengthMetres: number};

/** A place in tape terms: its distances to the nearer side wall and to the nearer of screen and back wall. */
export function placeInTapeTerms(place: Vector, shape: FloorSize, unit: LengthUnit): string {
	const [side, end] = distancesFrom(place, wallsNear(place, shape), shape, unit);
	return `${side.length} from ${side.wall}, ${end.length} from ${end.wall}`;
}

/** Where a thing goes and where it stands, both against the walls that are near where it goes. */
export function moveInTapeTerms(
	{from, to}: {readonly from: Vector; readonly to: Vector},
	shape: FloorSize,
	unit: LengthUnit,
): string {
	const walls = wallsNear(to, shape);
	const [side, end] = distancesFrom(to, walls, shape, unit);
	const [nowSide, nowEnd] = distancesFrom(from, walls, shape, unit);
	return `to ${side.length} from ${side.wall}, ${end.length} from ${end.wall} (now ${nowSide.length} and ${nowEnd.length})`;
}

type NearWalls = {readonly isLeft: boolean; readonly isFront: boolean};

const wallsNear = ([x, y]: Vector, {widthMetres, lengthMetres}: FloorSize): NearWalls => ({
	isLeft: x <= widthMetres / 2,
	isFront: y <= lengthMetres / 2,
});

type WallDistance = {readonly length: string; readonly wall: string};

function distancesFrom(
	[x, y]: Vector,
	{isLeft, isFront}: NearWalls,
	{widthMetres, lengthMetres}: FloorSize,
	unit: LengthUnit,
): readonly [WallDistance, WallDistance] {
	const length = (metres: number) =>
		formatLength(metres, unit, {stepMetres: unit.startsWith('ft') ? 0.0254 / 2 : 0.01});
	return [
		{length: length(isLeft ? x : widthMetres - x), wall: isLeft ? 'the left wall' : 'the right wall'},
		{length: length(isFront ? y : lengthMetres - y), wall: isFront ? 'the screen wall' : 'the back wall'},
	];
}
