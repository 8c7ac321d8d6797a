import {meterReading, settingsSet} from '../schema/observed.ts';
import {profileSchema} from '../schema/profile.ts';
import {recording, response} from '../schema/recorded.ts';
import {seat, tapeReading} from '../schema/room.ts';

/**
Order of known keys at the top ('') and in the entries of lists; unknown keys follow in the order they have. The build
writes what this gives into the program, so that the schema library is not loaded for it.
*/
export const keyOrder: Readonly<Record<string, readonly string[]>> = {
	'': Object.keys(profileSchema.shape),
	tape: Object.keys(tapeReading.shape),
	meter: Object.keys(meterReading.shape),
	recordings: Object.keys(recording.shape),
	responses: Object.keys(response.shape),
	seats: Object.keys(seat.shape),
	settings: Object.keys(settingsSet.shape),
};
