import {isOverhead} from '../../profile/channels.ts';
import type {Profile} from '../../profile/types.ts';
import {readEnd} from './ends.ts';
import type {Positions} from './result.ts';

/** Slack where none is entered: a tenth of the run, at least half a metre. Common practice, no source. */
export function usualSlackMetres(runMetres: number): number {
	return Math.max(0.5, runMetres / 10);
}

type Point = {readonly x: number; readonly y: number; readonly z: number};

function pointOf(box: string, profile: Profile, positions: Positions): Point | undefined {
	const placed = profile.wiring?.equipment?.find(({id}) => id === box);
	if (placed) return {x: placed.leftWallMetres, y: placed.frontWallMetres, z: placed.heightMetres ?? 0.5};
	return positions.get(box);
}

/** Straight line between the two boxes of a cable, metres; undefined where one of them has no known place. */
export function straightLineMetres(
	ends: {readonly from: string; readonly to: string},
	profile: Profile,
	positions: Positions,
): number | undefined {
	const a = pointOf(readEnd(ends.from).box, profile, positions);
	const b = pointOf(readEnd(ends.to).box, profile, positions);
	return a && b && Math.hypot(a.x - b.x, a.y - b.y, a.z - b.z);
}

/**
Estimate of a run laid along walls, with right angles: down to the floor and up again, or for overhead speakers straight
up the wall and along the ceiling. An estimate for buying, not for cutting.

@returns Metres, or undefined where one of the boxes has no known place.
*/
export function estimatedRunMetres(
	ends: {readonly from: string; readonly to: string},
	profile: Profile,
	positions: Positions,
): number | undefined {
	const a = pointOf(readEnd(ends.from).box, profile, positions);
	const b = pointOf(readEnd(ends.to).box, profile, positions);
	if (!a || !b) return undefined;
	const isAbove = [ends.from, ends.to].some(end => isOverhead(readEnd(end).box));
	const vertical = isAbove ? Math.abs(a.z - b.z) : a.z + b.z;
	return Math.abs(a.x - b.x) + Math.abs(a.y - b.y) + vertical;
}
