import type {Profile} from '../types.ts';
import {inputsHash} from './digest.ts';
import {decidedSettings} from './settings.ts';

/** Whether the decided settings were computed from other readings or gear than the profile holds now. */
export function isStale(profile: Profile): boolean {
	const hash = decidedSettings(profile)?.inputsHash;
	return hash !== undefined && hash !== inputsHash(profile);
}
