import {newProfile} from '../../source/profile/generic/newProfile.ts';
import type {Profile} from '../../source/profile/types.ts';

/** An invented 5.1.2 with one sub in feet and inches, nothing measured. */
export function den(changes: Partial<Profile> = {}): Profile {
	return {
		...newProfile({
			name: 'Den',
			date: '2026-04-18',
			layout: '5.1.2',
			lengthUnit: 'ft-in',
			receiver: 'fine-feet',
		}),
		...changes,
	};
}
