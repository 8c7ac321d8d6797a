import {ceilingHeights} from '../../profile/ask/ceiling.ts';
import type {Observation} from './observations.ts';
import type {SurveyInput} from './points.ts';

/** A reading this many sigmas longer than the room can hold is no matter of chance. */
const certainSigmas = 5;
/** Where the height is not stated, no home room is higher, metres. */
const highestMetres = 6;

/** Whether a reading is longer than the stated room allows: beyond the opposite wall, or longer than the diagonal. */
export function beyondRoom(profile: SurveyInput, observation: Observation): boolean {
	const {widthMetres, lengthMetres, ceiling} = profile.room;
	const height = ceiling && Math.max(...ceilingHeights(ceiling));
	const sizes = [widthMetres, lengthMetres, height];
	const limit = (() => {
		switch (observation.kind) {
			case 'plane':
				return sizes[observation.axis];
			case 'slope':
			case 'broken':
				return height;
			case 'planes':
				return undefined;
			default:
				return widthMetres === undefined || lengthMetres === undefined
					? undefined
					: Math.hypot(widthMetres, lengthMetres, height ?? highestMetres);
		}
	})();
	return limit !== undefined && observation.metres > limit + certainSigmas * observation.sigmaMetres;
}
