import type {Profile} from '../profile/types.ts';
import {decidedSettings} from './inForce.ts';
import {inputsHash} from './inputsHash.ts';

/** Whether the decided settings were computed from other readings or gear than the profile holds now. */
export function isStale(profile: Profile): boolean {
	const hash = decidedSettings(profile)?.inputsHash;
	return hash !== undefined && hash !== inputsHash(profile);
}
