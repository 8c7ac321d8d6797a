import {levelsDb, summed} from './bass.ts';
import {octaveFractionGrid} from './frequencies.ts';
import {modalResponse, modalWeights} from './modalResponse.ts';
import {roomModes} from './modes.ts';
import type {RoomInputs} from './roomStudy.ts';

/** Level of all subs together along the row of the reference seat, from wall to wall. */
export type SeatRow = {
	/** Distance from the left wall, metres. */
	readonly placesMetres: readonly number[];
	readonly frequenciesHertz: readonly number[];
	/** One list a frequency, over the places; dB against the mean of that frequency over the row. */
	readonly levelsDb: ReadonlyArray<readonly number[]>;
};

/**
A map of the seat row: how loud each frequency is at each place from the left wall to the right, at the reference seat's
height and distance from the screen wall. Empty where no seat or no sub has a place.

@param count - Places from wall to wall.
*/
export function seatRow({shape, decay, speedOfSound, seats, subs}: RoomInputs, count: number): SeatRow {
	const frequenciesHertz = octaveFractionGrid(20, 160, 6);
	const [ear] = seats;
	if (!ear || subs.length === 0) return {placesMetres: [], frequenciesHertz, levelsDb: []};
	const modes = roomModes(shape, 300, speedOfSound);
	const weights = modalWeights(modes, frequenciesHertz, decay.seconds, speedOfSound);
	const sources = subs.flatMap(({at}) => modes.at(at) ?? []);
	const places = Array.from({length: count}, (_, i) => (shape.widthMetres * (i + 0.5)) / count).flatMap(x => {
		const here = modes.at([x, ear.at[1], ear.at[2]]);
		return here ? [{x, here}] : [];
	});
	const columns = places.map(({here}) =>
		levelsDb(
			summed(
				frequenciesHertz,
				sources.map(source => ({response: modalResponse(weights, source, here)})),
			),
		),
	);
	return {
		placesMetres: places.map(({x}) => x),
		frequenciesHertz,
		levelsDb: frequenciesHertz.map((_, f) => {
			const levels = columns.map(column => column[f]!);
			const mean = levels.reduce((sum, level) => sum + level, 0) / levels.length;
			return levels.map(level => level - mean);
		}),
	};
}
