import {eyringDecaySeconds} from './decay.ts';
import type {RoomShape} from './shape.ts';
import {volumeOf} from './shape.ts';
import {surfacesOf} from './surfaces.ts';

/** Reverberation time in the bass and where it comes from. */
export type Decay = {readonly seconds: number; readonly from: 'recorded' | 'stated' | 'estimated'};

/**
Share of sound energy that the surfaces of a furnished living room take in the bass, where nobody measured it: light
walls and floors give. Common practice, no source; a bare concrete cellar takes a third of that.
*/
export const usualBassAbsorption = 0.22;

/** Range within which the decay of a living room's bass lies, seconds. Common practice, no source. */
const usualDecaySeconds = {least: 0.25, most: 0.65} as const;

/**
The decay to compute with: recorded, else stated, else estimated from the surfaces by Eyring's formula with a usual
absorption, kept within what living rooms show.
*/
export function decayOf(
	shape: RoomShape,
	told: {readonly recordedSeconds?: number; readonly statedSeconds?: number},
	speedOfSound: number,
): Decay {
	if (told.recordedSeconds !== undefined) return {seconds: told.recordedSeconds, from: 'recorded'};
	if (told.statedSeconds !== undefined) return {seconds: told.statedSeconds, from: 'stated'};
	const surfaces = surfacesOf(shape).map(({squareMetres}) => ({
		squareMetres,
		absorption: usualBassAbsorption,
	}));
	const seconds = eyringDecaySeconds(volumeOf(shape), surfaces, speedOfSound);
	return {
		seconds: Math.min(usualDecaySeconds.most, Math.max(usualDecaySeconds.least, seconds)),
		from: 'estimated',
	};
}
