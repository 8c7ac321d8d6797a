import {isPlane} from './planes.ts';

/** What a list of profiles shows of one. */
export type Summary = {
	readonly name: string;
	readonly date: string;
	readonly room: string;
	readonly tapeReadings: number;
	readonly meterReadings: number;
	/** How far the round has come: nothing measured, measuring, settings decided, settings proved by a second round. */
	readonly state: 'new' | 'measuring' | 'decided' | 'proved';
};

type Loose = Readonly<Record<string, unknown>>;

const objectOf = (value: unknown): Loose =>
	typeof value === 'object' && value !== null ? (value as Loose) : {};
const listOf = (value: unknown): readonly Loose[] =>
	Array.isArray(value) ? value.map(entry => objectOf(entry)) : [];

const isPlaneEnd = (end: unknown): boolean => typeof end === 'string' && isPlane(end);

/**
Sums up a parsed file without checking all of it, so that a folder of a thousand lists at once.

@returns Undefined for a file that is no profile: no object, or one without name, date or room.
*/
export function summarise(file: unknown): Summary | undefined {
	const {name, date, room, tape, meter, settings} = objectOf(file);
	const roomName = objectOf(room).name;
	if (typeof name !== 'string' || typeof date !== 'string' || typeof roomName !== 'string') return undefined;
	const readings = listOf(meter);
	const tapeReadings = listOf(tape).length;
	const isDecided = listOf(settings).some(({origin}) => origin === 'solved' || origin === 'entered');
	const isProved = readings.some(({round}) => round === 'proof');
	// The room's own size says nothing of how far a round is: it comes along from the older one.
	const hasAny =
		readings.length > 0 || listOf(tape).some(({from, to}) => !isPlaneEnd(from) || !isPlaneEnd(to));
	return {
		name,
		date,
		room: roomName,
		tapeReadings,
		meterReadings: readings.length,
		state: isProved ? 'proved' : isDecided ? 'decided' : hasAny ? 'measuring' : 'new',
	};
}
