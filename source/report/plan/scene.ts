import type {Room} from '../../profile/types.ts';

/** A place in the room frame: x from the left wall, y from the screen wall, z from the floor; metres. */
export type RoomPoint = {readonly x: number; readonly y: number; readonly z: number};

export type PlanPoint = RoomPoint & {
	readonly id: string;
	/** Short, for the drawing. */
	readonly label: string;
	/** In full, for words; the label where missing. */
	readonly name?: string;
	readonly kind: 'speaker' | 'sub' | 'seat' | 'screen';
	/** Distances in the legend are measured from the reference seat; the first seat where none is marked. */
	readonly reference?: boolean;
	/** What the speaker points at, metres. */
	readonly aim?: RoomPoint;
	/** Where it stood before, metres; a dotted trail leads there. */
	readonly before?: RoomPoint;
	/** Where it is to stand: its mark is filled, and that of the place before is hollow. */
	readonly isPlanned?: boolean;
	/** Horizontal error ellipse: half axes in metres, the longer one's angle from x towards y in degrees. */
	readonly ellipse?: {
		readonly majorMetres: number;
		readonly minorMetres: number;
		readonly angleDegrees: number;
	};
	/** Width of a picture, metres; drawn in the view from above. */
	readonly widthMetres?: number;
	/** Height of a picture, metres; drawn in the view from the side. */
	readonly heightMetres?: number;
};

/** What a floor plan shows. Walls whose place is not known are not drawn. */
export type PlanScene = {
	readonly room: Pick<Room, 'widthMetres' | 'lengthMetres' | 'ceiling' | 'missingCorner'>;
	readonly points: readonly PlanPoint[];
	/** Rectangles of the floor that are taken, metres: dotted, from above only. */
	readonly taken?: ReadonlyArray<{
		readonly left: number;
		readonly right: number;
		readonly near: number;
		readonly far: number;
	}>;
};

export function referencePoint(scene: PlanScene): PlanPoint | undefined {
	const seats = scene.points.filter(({kind}) => kind === 'seat');
	return seats.find(({reference}) => reference) ?? seats[0];
}

/** Metres between two places. */
export function separation(a: RoomPoint, b: RoomPoint): number {
	return Math.hypot(a.x - b.x, a.y - b.y, a.z - b.z);
}
