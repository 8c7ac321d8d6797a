/** The four walls, as seen from the seat facing the screen. */
export const walls = ['wall:left', 'wall:right', 'wall:front', 'wall:back'] as const;
/** Every plane that a tape can be held against. */
export const planes = [...walls, 'floor', 'ceiling'] as const;
export type Plane = (typeof planes)[number];
