/** A point in the room's frame, metres: x to the right, y from the screen wall to the back, z up. */
export type Point = readonly [x: number, y: number, z: number];

/** Octaves for which walls have an absorption of their own, Hz; between two of them amplitudes are blended over log f. */
export const octaves = [31.5, 63, 125, 250, 500, 1000, 2000, 4000, 8000] as const;

/** A rectangular room. */
export type Box = {
	readonly sizeMetres: Point;
	readonly speedOfSound: number;
	/**
	Amplitude reflection factor by octave, then by wall: left, right, front, back, floor, ceiling. Real, so no phase is
	turned. Undefined: no walls at all.
	*/
	readonly reflections?: readonly (readonly number[])[];
	/** Further decay of all sound, 1/s: amplitudes shrink by e^(−decay·t). */
	readonly decayPerSecond?: number;
	/** Images later than this are left out, seconds. */
	readonly longestSeconds: number;
};

/** Where sound starts: a point, and for a dipole the direction of its front. */
export type Source = {readonly at: Point; readonly dipoleAxis?: Point};

export const distanceBetween = (a: Point, b: Point): number =>
	Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);

/** No walls: what is left is the direct sound. */
export const openSpace = (speedOfSound = 343.5): Box => ({
	sizeMetres: [5, 6, 2.5],
	speedOfSound,
	longestSeconds: 0.05,
});
