import {directionOf} from './directions.ts';
import type {Convention} from './equations.ts';
import type {ConventionFact} from './facts.ts';
import type {SurveyNetwork} from './network.ts';
import type {Observation} from './observations.ts';
import {nominalDirection} from './starts.ts';

const roomDimensions = ['width', 'length', 'height'] as const;

/**
Conventions that can hold a network in the room, best first: where the seat is, which way the screen is, that left
and right stand level, and last the usual size of a room.

@param members - Points of the part that is to be held.
@param dimensions - Offsets of room dimensions that are unknown.
*/
export function offeredConventions(
	{profile, points}: SurveyNetwork,
	observations: readonly Observation[],
	state: Float64Array,
	members: readonly number[],
	dimensions: readonly number[],
): Convention[] {
	const offered: Convention[] = [];
	const hold = (offset: number, fact: ConventionFact) =>
		offered.push({offsets: [offset], factors: [1], value: state[offset]!, fact});
	const base = members.includes(0) ? 0 : members[0];
	if (base !== undefined) {
		const {id: about} = points[base]!;
		hold(base * 3, {what: 'mid-width', about});
		hold(base * 3 + 1, {what: 'usual-distance', about});
		hold(base * 3 + 2, {what: 'usual-height', about});
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
			const {id} = points[anchor]!;
			const direction = nominalDirection(profile, id) ?? directionOf([0, -1, 0]);
			const angle = (direction.azimuthDegrees * Math.PI) / 180;
			const isAhead = id === 'screen' || id === 'FC';
			offered.push({
				offsets: [anchor * 3, anchor * 3 + 1, base * 3, base * 3 + 1],
				factors: [Math.cos(angle), -Math.sin(angle), -Math.cos(angle), Math.sin(angle)],
				value: 0,
				fact: {what: isAhead ? 'straight-ahead' : 'usual-direction', about: id},
			});
			offered.push({
				offsets: [anchor * 3 + 2, base * 3 + 2],
				factors: [1, -1],
				value: state[anchor * 3 + 2]! - state[base * 3 + 2]!,
				fact: {what: 'usual-height-above-ear', about: id},
			});
		}
	}

	for (const offset of dimensions) {
		const dimension = roomDimensions[offset - points.length * 3]!;
		hold(offset, {what: `room-${dimension}`});
	}

	return offered;
}
