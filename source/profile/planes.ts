/** The four walls, as seen from the seat facing the screen. */
export const walls = ['wall:left', 'wall:right', 'wall:front', 'wall:back'] as const;
/** Every plane that a tape can be held against. */
export const planes = [...walls, 'floor', 'ceiling'] as const;

/** Whether an end of the tape is a wall, the floor or the ceiling. */
export function isPlane(end: string): end is Plane {
	return (planes as readonly string[]).includes(end);
}

export type Plane = (typeof planes)[number];
