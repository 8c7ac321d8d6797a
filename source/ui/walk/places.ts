/** The stops of the walk, in their order. */
export const stopIds = ['room', 'tape', 'meter', 'dialIn', 'bass', 'proof', 'keep'] as const;
export type StopId = (typeof stopIds)[number];

/** What is opened by a key from anywhere, never blocks and is never shown as undone. */
export const drawerIds = ['kit', 'wiring'] as const;
export type DrawerId = (typeof drawerIds)[number];

export function isDrawerId(place: WalkPlace): place is DrawerId {
	return drawerIds.some(id => id === place);
}

/** Where a question belongs; `new` are the questions before a profile exists. */
export type WalkPlace = StopId | DrawerId | 'new';
