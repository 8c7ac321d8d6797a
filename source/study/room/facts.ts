import type {FindingOf} from '../../profile/finding.ts';
import type {ShapeFault} from './shape.ts';
import type {RoomSurface} from './surfaces.ts';

/** What can be found about a room, with its facts. */
export type RoomFacts = {
	'room-size-missing': {readonly missing: ReadonlyArray<'width' | 'length' | 'height'>};
	'room-size-impossible': ShapeFault;
	/** The ceiling changes under a plan that lacks a corner: computed with its mean height. */
	'room-nearest-shape': {readonly heightMetres: number};
	'room-decay-estimated': {readonly seconds: number};
	'room-nothing-placed': {readonly what: 'subs' | 'seats'};
	'room-place-outside': Readonly<Record<string, never>>;
	/** Standing waves that fall on one frequency, within what sizes wrong by 1.5 % let tell. */
	'room-modes-together': {readonly frequenciesHertz: readonly number[]};
	/** A seat where a strong standing wave has next to no pressure. */
	'seat-in-null': {readonly frequencyHertz: number; readonly levelDb: number};
	'seat-hole': {readonly frequencyHertz: number; readonly depthDb: number};
	'speaker-boundary-dip': {
		readonly frequencyHertz: number;
		readonly levelDb: number;
		readonly plane: RoomSurface['plane'];
	};
	'model-beside-recording': {
		readonly distanceDb: number;
		readonly fromHertz: number;
		readonly toHertz: number;
	};
};

export type RoomFinding = FindingOf<RoomFacts>;
