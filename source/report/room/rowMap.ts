import {formatNumber} from '../../profile/units/decimalText.ts';
import type {SeatRow} from '../../study/room/seatRow.ts';

/** From a hole to a peak; told apart by how much of the cell is filled. */
const shades = [' ', '·', '░', '▒', '▓', '█'];
/** Level at which each shade begins, dB against the mean of the row. */
const steps = [-12, -6, -2, 2, 5];

/** The map of a seat row: a line a frequency, a cell a place; `mark` is the cell of the seat. */
export function rowMapLines(row: SeatRow, seatMetres: number, widthMetres: number): string[] {
	if (row.placesMetres.length === 0) return [];
	const label = (hertz: number) => `${formatNumber(hertz, 0)} Hz`.padStart(7);
	const cells = row.placesMetres.length;
	const at = Math.min(cells - 1, Math.floor((seatMetres / widthMetres) * cells));
	return [
		...row.levelsDb.map(
			(levels, f) =>
				`${label(row.frequenciesHertz[f]!)} ▕${levels.map(level => shades[steps.filter(step => level >= step).length]).join('')}▏`,
		),
		`${' '.repeat(9 + at)}▲`,
		`        left wall${'right wall'.padStart(cells - 8)}`,
		`        blank: 12 dB or more below the row's mean; full: 5 dB or more above. ▲ the seat.`,
	];
}
