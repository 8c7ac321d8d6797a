import type {Profile} from '../../profile/types.ts';
import type {Placed, RoomInputs} from '../room/roomStudy.ts';
import type {Vector} from '../survey/vectors.ts';
import {speakerAngles} from './speakerMoves.ts';

/** What an arrangement is worth beside its bass, each in its unit. */
export type PlanMeasures = {
	/** Farthest that a speaker is outside its published range of azimuths at the reference seat, degrees; 0 where all are inside. */
	readonly outsideDegrees: number;
	/** Between the picture's edges from the reference seat, degrees; where the picture's width is known. */
	readonly viewingDegrees?: number;
	/** To the subs along walls, from the middle of the screen wall where the receiver usually stands, metres. */
	readonly cableMetres: number;
};

/**
Angles, view and cable of an arrangement. Speakers stay where they are.

@param speakers - Where speakers stand, or usually do.
*/
export function planMeasures(
	{channels, screen}: Pick<Profile, 'channels' | 'screen'>,
	{widthMetres}: Pick<RoomInputs['shape'], 'widthMetres'>,
	speakers: readonly Placed[],
	{subs, seats}: {readonly subs: readonly Vector[]; readonly seats: readonly Vector[]},
): PlanMeasures {
	const ear = seats[0]!;
	const centre = speakers.find(({id}) => id === 'FC')?.at ?? [widthMetres / 2, 0, ear[2]];
	const angles = speakerAngles({channels}, {widthMetres}, speakers, ear);
	const width = screen?.widthMetres;
	return {
		outsideDegrees: Math.max(0, ...angles.map(one => one.outsideDegrees)),
		...(width !== undefined && {
			viewingDegrees: (360 / Math.PI) * Math.atan(width / (2 * Math.abs(ear[1] - centre[1] || ear[1]))),
		}),
		cableMetres: subs.reduce((sum, [x, y]) => sum + Math.abs(x - widthMetres / 2) + y, 0),
	};
}
