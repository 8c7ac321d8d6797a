import type {Placed} from '../room/roomStudy.ts';
import type {Vector} from '../survey/vectors.ts';

/** Ears of a row that is moved as a whole, metres towards the back. */
export const seatsMoved = (seats: readonly Placed[], shiftMetres: number): Vector[] =>
	seats.map(({at: [x, y, z]}) => [x, y + shiftMetres, z]);
