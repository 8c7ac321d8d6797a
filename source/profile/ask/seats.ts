/**
The seat that the settings are made for: the one marked as reference, the first where none is marked.

@param profile - Or anything with a list of seats, such as parsed JSON that nobody checked.
@returns `undefined` only where there is no seat at all; the schema wants one.
*/
export function referenceSeat<Seat extends {readonly reference?: unknown}>({
	seats,
}: {
	readonly seats: readonly Seat[];
}): Seat {
	return seats.find(({reference}) => reference === true) ?? seats[0]!;
}
