import {isPlane} from './planes.ts';
import type {Profile} from './types.ts';

/**
The profile after a speaker, sub, seat or the screen was moved: what was read where it stood is set aside, and so is
asked again; nothing of it is lost.
*/
export function withMoved(profile: Profile, id: string): Profile {
	const {tape, meter} = profile;
	const isSeat = profile.seats.some(seat => seat.id === id);
	return {
		...profile,
		...(tape && {
			tape: tape.map(one =>
				!one.setAside && (one.from === id || one.to === id) && !(isPlane(one.from) && isPlane(one.to))
					? {...one, setAside: true}
					: one,
			),
		}),
		...(meter && {
			meter: meter.map(one => {
				const isAbout = isSeat ? one.seat === id : [one.source].flat().includes(id);
				return isAbout && !one.setAside ? {...one, setAside: true} : one;
			}),
		}),
	};
}

/** Whether a level of this speaker or sub was read that counts. */
export function hasLevels({meter = []}: Profile, id: string): boolean {
	return meter.some(({source, setAside}) => !setAside && [source].flat().includes(id));
}
