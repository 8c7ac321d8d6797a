import type {Profile, Seat} from '../../profile/types.ts';

/** The seat that the settings are made for. */
export function referenceSeat(profile: Profile): Seat {
	return profile.seats.find(({reference}) => reference) ?? profile.seats[0]!;
}

/** Whether a speaker hangs above the seats, where taping means a ladder. */
export function isOverhead(id: string): boolean {
	return id.startsWith('Tp');
}
