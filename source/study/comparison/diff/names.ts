/** Whether an end of the tape is a wall, the floor or the ceiling. */
export const isPlane = (end: string): boolean =>
	end.startsWith('wall:') || end === 'floor' || end === 'ceiling';
