import {finding} from '../../profile/finding.ts';
import type {Profile} from '../../profile/types.ts';
import {speedOfSound} from '../../science/acoustics/air.ts';
import type {RoomFinding} from '../room/facts.ts';
import {roomInputs} from '../room/roomInputs.ts';
import type {Placed} from '../room/roomStudy.ts';
import {isInside, type RoomShape, shapeFaults} from '../room/shape.ts';
import type {NetworkResult} from '../survey/result.ts';
import {assumedPlaces} from './assumed.ts';
import {type ArrangementSpace, arrangementSpace, plannedAt} from './spaceOf.ts';

/** A profile's room as arrangements are looked for in it; where it is no room yet, what is wrong or missing. */
export type PlanSpace =
	| {
			readonly shape: RoomShape;
			readonly space: ArrangementSpace;
			/** Where speakers stand by tape, by plan, or usually. */
			readonly speakers: readonly Placed[];
	  }
	| {readonly shape?: undefined; readonly findings: readonly RoomFinding[]};

/**
What a profile's arrangement may become.

@param network - The adjusted tape network of the profile.
@param seatMetres - From the screen wall to the reference seat, where the seats were not taped.
*/
export function planSpace(profile: Profile, network: NetworkResult, seatMetres?: number): PlanSpace {
	const inputs = roomInputs(profile, network, speedOfSound(profile.air).metresPerSecond);
	if ('missing' in inputs)
		return {findings: [finding('problem', 'room-size-missing', [], {missing: inputs.missing})]};
	const {shape} = inputs;
	const faults = shapeFaults(shape);
	if (faults.length > 0)
		return {findings: faults.map(fault => finding('problem', 'room-size-impossible', [], fault))};
	const usual = assumedPlaces(profile, shape, seatMetres).speakers;
	const taped = inputs.speakers.filter(({at}) => isInside(shape, at));
	return {
		shape,
		space: arrangementSpace(profile, inputs, seatMetres),
		speakers: [
			...taped,
			...usual
				.filter(({id}) => !taped.some(one => one.id === id))
				.map(({id, at}) => ({id, at: plannedAt(profile, id) ?? at})),
		],
	};
}
