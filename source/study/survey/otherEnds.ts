import type {OtherEnd} from './causes.ts';
import {oppositeEnd} from './causes.ts';
import type {SurveyNetwork} from './network.ts';
import {type Observation, planeOf, pointIndex} from './observations.ts';
import type {SolvedNetwork} from './solveNetwork.ts';
import {distance, type Vector} from './vectors.ts';

const place = (state: Float64Array, point: number): Vector => [
	state[point * 3]!,
	state[point * 3 + 1]!,
	state[point * 3 + 2]!,
];

/**
What else a reading may have been taken to, with the distances that the network gives for it: the opposite speaker or
wall, the corner of the room that belongs to the wall, another point.

@param observation - The reading that is in doubt; the network was solved without it.
@param looseMetres - Worst standard uncertainty of each point.
*/
export function otherEnds(
	{profile, points, ends, exactDimensions}: SurveyNetwork,
	observation: Observation,
	{state, columnOf}: SolvedNetwork,
	looseMetres: readonly number[],
): OtherEnd[] {
	const {from, to} = profile.tape![observation.reading]!;
	const dimension = (axis: number) => {
		const offset = points.length * 3 + axis;
		return exactDimensions.has(offset) || columnOf[offset]! >= 0 ? state[offset]! : undefined;
	};
	const toPlane = (at: Vector, end: string): number | undefined => {
		const plane = planeOf(end)!;
		const far = plane.isFar ? dimension(plane.axis) : 0;
		return far === undefined ? undefined : Math.abs(far - at[plane.axis]!);
	};
	const found: OtherEnd[] = [];
	for (const [end, kept] of [
		[to, from],
		[from, to],
	] as const) {
		if (planeOf(kept)) {
			for (const [other, point] of points.entries()) {
				if (point.id === end || looseMetres[other]! > 0.3) continue;
				const metres = toPlane(place(state, other), kept);
				if (metres === undefined) continue;
				found.push({
					end: kept === to ? 'from' : 'to',
					instead: point.id,
					code: point.id === oppositeEnd(end) ? 'left-for-right' : 'other-thing',
					metres,
					sigmaMetres: looseMetres[other]!,
				});
			}

			continue;
		}

		const index = pointIndex(ends, kept);
		if (index < 0 || looseMetres[index]! > 0.3) continue;
		const at = place(state, index);
		const sigma = looseMetres[index]!;
		const opposite = oppositeEnd(end);
		if (planeOf(end)) {
			const straight = toPlane(at, end);
			const across = opposite === undefined ? undefined : toPlane(at, opposite);
			if (opposite !== undefined && across !== undefined) {
				found.push({
					end: kept === from ? 'to' : 'from',
					instead: opposite,
					code: 'left-for-right',
					metres: across,
					sigmaMetres: sigma,
				});
			}

			// The upright edges of that wall, and its foot: a tape slips into a corner easily.
			const square = end.startsWith('wall:')
				? ['wall:left', 'wall:right', 'wall:front', 'wall:back', 'floor']
				: [];
			for (const second of square) {
				if (planeOf(second)!.axis === planeOf(end)!.axis || straight === undefined) continue;
				const aside = toPlane(at, second);
				if (aside === undefined) continue;
				found.push({
					end: kept === from ? 'to' : 'from',
					instead: second,
					code: 'corner',
					metres: Math.hypot(straight, aside),
					sigmaMetres: sigma,
				});
			}

			continue;
		}

		for (const [other, point] of points.entries()) {
			if (other === index || point.id === end || looseMetres[other]! > 0.3) continue;
			found.push({
				end: kept === from ? 'to' : 'from',
				instead: point.id,
				code: point.id === opposite ? 'left-for-right' : 'other-thing',
				metres: distance(at, place(state, other)),
				sigmaMetres: Math.hypot(sigma, looseMetres[other]!),
			});
		}
	}

	return found;
}
