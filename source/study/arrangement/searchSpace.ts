import type {Placed, RoomInputs} from '../room/roomStudy.ts';
import type {SubPlace} from './subPlaces.ts';
import type {SettingSteps} from './subSettings.ts';

/** What a search may change. */
export type SearchSpace = {
	readonly room: Pick<RoomInputs, 'shape' | 'decay' | 'speedOfSound'>;
	/** Ears as they are, the reference seat first. */
	readonly seats: readonly Placed[];
	readonly subs: ReadonlyArray<Placed & {readonly isFixed: boolean}>;
	readonly places: readonly SubPlace[];
	/** How far all seats together may be moved towards the back, metres; 0 is one of them. */
	readonly rowShiftsMetres: readonly number[];
	readonly steps: SettingSteps | undefined;
};
