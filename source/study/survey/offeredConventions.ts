import {directionOf} from './directions.ts';
import type {Convention} from './equations.ts';
import type {Observation} from './observations.ts';
import type {Network} from './solveNetwork.ts';
import {nominalDirection} from './starts.ts';

/**
Conventions that can hold a network in the room, best first: where the seat is, which way the screen is, that left
and right stand level, and last the usual size of a room.

@param members - Points of the part that is to be held.
@param dimensions - Offsets of room dimensions that are unknown.
*/
export function offeredConventions(
	{profile, points}: Network,
	observations: readonly Observation[],
	state: Float64Array,
	members: readonly number[],
	dimensions: readonly number[],
): Convention[] {
	const offered: Convention[] = [];
	const hold = (offset: number, what: string) =>
		offered.push({offsets: [offset], factors: [1], value: state[offset]!, what});
	const base = members.includes(0) ? 0 : members[0];
	if (base !== undefined) {
		const {label} = points[base]!;
		hold(base * 3, `${label} is drawn in the middle of the room's width`);
		hold(base * 3 + 1, `${label} is drawn at a usual distance from the front wall`);
		hold(base * 3 + 2, `${label} is drawn at a usual height`);
		const links = (index: number) =>
			observations.filter(o => o.kind === 'points' && (o.from / 3 === index || o.to / 3 === index)).length;
		const preference = (index: number) => {
			const {id, kind} = points[index]!;
			const isAhead = kind === 'screen' || id === 'FC';
			// A point with fewer than three distances can swing by itself and would hold nothing but itself.
			return (links(index) >= 3 ? 4 : 0) + (isAhead ? 2 : nominalDirection(profile, id) ? 1 : 0);
		};
		const anchors = members.filter(index => index !== base).sort((a, b) => preference(b) - preference(a));
		for (const anchor of anchors) {
			const {id, label: name} = points[anchor]!;
			const direction = nominalDirection(profile, id) ?? directionOf([0, -1, 0]);
			const angle = (direction.azimuthDegrees * Math.PI) / 180;
			const isAhead = id === 'screen' || id === 'FC';
			offered.push({
				offsets: [anchor * 3, anchor * 3 + 1, base * 3, base * 3 + 1],
				factors: [Math.cos(angle), -Math.sin(angle), -Math.cos(angle), Math.sin(angle)],
				value: 0,
				what: isAhead
					? `${name} is taken as straight ahead`
					: `${name} is taken to stand in its usual direction`,
			});
			offered.push({
				offsets: [anchor * 3 + 2, base * 3 + 2],
				factors: [1, -1],
				value: state[anchor * 3 + 2]! - state[base * 3 + 2]!,
				what: `${name} is taken at a usual height above the ear`,
			});
		}
	}

	for (const offset of dimensions) {
		hold(offset, `the room's ${['width', 'length', 'height'][offset - points.length * 3]} is taken as usual`);
	}

	return offered;
}
