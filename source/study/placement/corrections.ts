import {isOverhead} from '../../profile/channels.ts';
import {speakerClearanceMetres} from '../../profile/practice.ts';
import type {Profile} from '../../profile/types.ts';
import {wrapDegrees} from '../survey/directions.ts';
import type {NetworkResult, PlacedPoint} from '../survey/result.ts';
import {ceilingHeightAt, outsideBy} from '../survey/roomSize.ts';
import {distance, length, subtract, type Vector} from '../survey/vectors.ts';
import {aheadDegrees, aheadOf, isKnown} from './angles.ts';
import type {AngleJudgement, ChannelJudgement} from './judge.ts';
import {stateOf} from './propagate.ts';

/** One way to bring a channel to where it belongs. */
export type Correction = {
	readonly id: string;
	/** What is moved: the speaker itself, or the seat. */
	readonly moves: string;
	readonly by: Vector;
	readonly sizeMetres: number;
	readonly to: Vector;
	/** Distance to the reference seat afterwards, metres. */
	readonly toSeatMetres: number;
	/** What it brings right. */
	readonly repairs: ReadonlyArray<'azimuth' | 'elevation'>;
};

/** A move beyond this is another room, not a correction, metres. */
const longestMove = 2.5;
/** Aimed this far inside a limit, so that the next tape reading does not fall outside again, degrees. */
const insideDegrees = 0.5;
const radians = Math.PI / 180;

/** The angle to aim at: the nearest one inside the range, or the nominal one where there is no range. */
export function wanted({
	measuredDegrees,
	nominalDegrees,
	rangeDegrees,
	excessDegrees,
}: AngleJudgement): number {
	if (excessDegrees === 0) return measuredDegrees.value;
	if (!rangeDegrees) return nominalDegrees;
	const [low, high] = rangeDegrees;
	const inside = Math.min(insideDegrees, (high - low) / 2);
	const value = nominalDegrees + wrapDegrees(measuredDegrees.value - nominalDegrees);
	return Math.min(high - inside, Math.max(low + inside, value));
}

/** Places on a horizontal ray from the ear, reached by sliding sideways, along the room, or straight across to the ray. */
function onRay(ear: Vector, from: Vector, azimuthDegrees: number): Vector[] {
	const u: Vector = [-Math.sin(azimuthDegrees * radians), -Math.cos(azimuthDegrees * radians), 0];
	const [x, y] = subtract(from, ear);
	const along = [y / u[1], x / u[0], x * u[0] + y * u[1]];
	return along
		.filter(t => Number.isFinite(t) && t > 0.2)
		.map(t => [ear[0] + t * u[0], ear[1] + t * u[1], from[2]]);
}

/** A place overhead in a direction, at the same gap below the ceiling, which may slope. */
function overhead(
	result: NetworkResult,
	ear: Vector,
	from: Vector,
	azimuthDegrees: number,
	elevationDegrees: number,
): Vector {
	const gap = (ceilingHeightAt(result.room, from[0], from[1]) ?? from[2]) - from[2];
	let at = from;
	for (let round = 0; round < 8; round++) {
		const away = (at[2] - ear[2]) / Math.tan(elevationDegrees * radians);
		const x = ear[0] - Math.sin(azimuthDegrees * radians) * away;
		const y = ear[1] - Math.cos(azimuthDegrees * radians) * away;
		const top = ceilingHeightAt(result.room, x, y);
		at = [x, y, top === undefined ? from[2] : top - gap];
	}

	return at;
}

function waysToGo(
	result: NetworkResult,
	ear: Vector,
	point: PlacedPoint,
	azimuth: number,
	elevation: number,
	fixes: Correction['repairs'],
): Vector[] {
	const from = point.at;
	if (isOverhead(point.id)) return [overhead(result, ear, from, azimuth, elevation)];
	const flat = fixes.includes('azimuth') ? onRay(ear, from, azimuth) : [from];
	if (!fixes.includes('elevation')) return flat;
	const tangent = Math.tan(elevation * radians);
	return flat.flatMap((at): Vector[] => {
		const [x, y] = subtract(at, ear);
		const across = Math.hypot(x, y);
		const raised: Vector = [at[0], at[1], ear[2] + across * tangent];
		const away = (at[2] - ear[2]) / tangent;
		const nearer: Vector = [ear[0] + (x / across) * away, ear[1] + (y / across) * away, at[2]];
		return away > 0.2 ? [raised, nearer] : [raised];
	});
}

/** Whether a speaker there would stand in front of the picture. */
function coversPicture({points}: NetworkResult, to: Vector, screen: Profile['screen']): boolean {
	const middle = points.find(point => point.kind === 'screen' && isKnown(point));
	if (!middle || !screen?.widthMetres) return false;
	const height = screen.heightMetres ?? (screen.widthMetres * 9) / 16;
	const isAhead = to[1] < middle.at[1] + 1 && to[1] > middle.at[1];
	return (
		isAhead &&
		Math.abs(to[0] - middle.at[0]) < screen.widthMetres / 2 &&
		Math.abs(to[2] - middle.at[2]) < height / 2
	);
}

/**
Moves that bring a channel into its range at the reference seat, smallest first.

Speakers slide at their height, overheads along the ceiling; nothing leaves the room or comes closer than 5 cm to a
wall that it does not stand at already. A fixed speaker is left where it is: then the list is empty.

@param judgement - From `judge`; a channel in its range has no corrections.
@param seat - Id of the reference seat.
@param screen - The picture, in front of which no speaker is put.
*/
export function corrections(
	result: NetworkResult,
	judgement: ChannelJudgement,
	seat: string,
	screen?: Profile['screen'],
): Correction[] {
	const parts = [judgement.azimuth, judgement.elevation].filter(part => part !== undefined);
	const off = parts.filter(({excessDegrees}) => excessDegrees > 0);
	const ear = result.points.findIndex(({id}) => id === seat);
	const point = result.points.find(({id}) => id === judgement.id);
	if (off.length === 0 || ear < 0 || !point || point.isFixed || !isKnown(point)) return [];
	const at = result.points[ear]!.at;
	const forward = aheadDegrees(stateOf(result), ear, aheadOf(result));
	const repairs = off.map(({what}) => what);
	const azimuth = (judgement.azimuth ? wanted(judgement.azimuth) : 0) + forward;
	const isInside = (to: Vector) => {
		const margin = (axis: 0 | 1 | 2, step: number) =>
			outsideBy(
				result.room,
				to.map((value, index) => (index === axis ? value + step : value)) as unknown as Vector,
			) === 0;
		const before = (axis: 0 | 1 | 2, step: number) =>
			outsideBy(
				result.room,
				point.at.map((value, index) => (index === axis ? value + step : value)) as unknown as Vector,
			) > 0;
		if (result.conventions.length > 0) return true;
		return ([0, 1, 2] as const).every(axis =>
			[-speakerClearanceMetres, speakerClearanceMetres].every(
				step => margin(axis, step) || (before(axis, step) && outsideBy(result.room, to) === 0),
			),
		);
	};
	const found = waysToGo(result, at, point, azimuth, wanted(judgement.elevation), repairs)
		.map((to): Correction => {
			const by = subtract(to, point.at);
			return {
				id: point.id,
				moves: point.id,
				by,
				sizeMetres: length(by),
				to,
				toSeatMetres: distance(to, at),
				repairs,
			};
		})
		.filter(
			({to, sizeMetres}) => sizeMetres <= longestMove && isInside(to) && !coversPicture(result, to, screen),
		)
		.sort((a, b) => a.sizeMetres - b.sizeMetres);
	// Two ways that end within a centimetre of each other are one.
	return found.filter(({to}, index) => found.slice(0, index).every(other => distance(other.to, to) > 0.01));
}
