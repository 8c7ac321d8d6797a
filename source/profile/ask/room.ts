import type {Profile} from '../types.ts';

type Roomed = Pick<Profile, 'room'>;

/** Whether two profiles are of one room: rooms are told apart by their names, capitals and blanks around them aside. */
export function isSameRoom(one: Roomed, other: Roomed): boolean {
	const nameOf = ({room}: Roomed) => room.name.trim().toLowerCase();
	return nameOf(one) === nameOf(other);
}
