import {referenceSeat} from '../../profile/ask/seats.ts';
import type {Profile} from '../../profile/types.ts';
import {minutesFor, plannedPlayings, subGroups} from '../hearing/visit.ts';
import {roundFile} from './roundFile.ts';

/** What a recorded round takes at the reference seat. */
export type OfferedRecording = {
	readonly playings: number;
	/** Times that something is turned at a box. */
	readonly changes: number;
	readonly minutes: number;
};

/** Whether the file of two channels can be played into a profile's receiver. */
export function canRecord({channels}: Pick<Profile, 'channels'>): boolean {
	return channels.some(({id}) => id === 'FL' || id === 'FR');
}

/** The blend by recording as it is offered; `undefined` where its file cannot be played. */
export function offeredRecording(profile: Profile): OfferedRecording | undefined {
	if (!canRecord(profile)) return undefined;
	const playings = plannedPlayings([referenceSeat(profile).id], subGroups(profile)).length;
	const {seconds} = roundFile(profile, 'two').round;
	return {playings, changes: playings - 1, minutes: minutesFor(playings, seconds)};
}
