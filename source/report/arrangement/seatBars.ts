import {cellWidth, fitCells} from '../fitCells.ts';

const blocks = ' ▁▂▃▄▅▆▇█';
const unit = ' Hz';
/** Level of the lowest block against the mean of the first seat, and what one block more is worth, dB. */
const barScale = {fromDb: -15, stepDb: 3} as const;

/**
Seats as rows on one scale of the bass, a block the louder the higher; what is 15 dB or more below the first seat's mean
is blank.

@param seats - The reference seat first; levels at `frequenciesHertz`, dB.
@returns Lines of at most `columns` cells: one a seat, then the frequencies.
*/
export function seatBars(
	frequenciesHertz: readonly number[],
	seats: ReadonlyArray<{readonly name: string; readonly levelsDb: readonly number[]}>,
	columns: number,
): string[] {
	const names = Math.min(18, Math.max(...seats.map(({name}) => cellWidth(name))));
	const cells = Math.max(8, Math.min(frequenciesHertz.length, columns - names - 1));
	const levels = seats[0]!.levelsDb;
	const mean = levels.reduce((sum, level) => sum + level, 0) / levels.length;
	const at = (cell: number) => Math.round((cell * (frequenciesHertz.length - 1)) / Math.max(1, cells - 1));
	const rows = seats.map(({name, levelsDb}) => {
		const bars = Array.from({length: cells}, (_, cell) => {
			const step = Math.ceil((levelsDb[at(cell)]! - mean - barScale.fromDb) / barScale.stepDb);
			return blocks[Math.max(0, Math.min(blocks.length - 1, step))];
		});
		return `${fitCells(name, names)} ${bars.join('')}`;
	});
	let axis = ' '.repeat(names + 1);
	for (let cell = 0; cell < cells; cell++) {
		const hertz = frequenciesHertz[at(cell)]!;
		const mark = [20, 30, 40, 60, 80, 100, 120].find(one => Math.abs(hertz / one - 1) < 0.03);
		const start = names + 1 + cell;
		// A mark that would be cut is left out; the unit needs its place after the last.
		const isWhole = start + String(mark).length + unit.length <= columns;
		if (mark !== undefined && isWhole && axis.trimEnd().length < start)
			axis = `${axis.slice(0, start)}${mark}`.padEnd(start + 4);
	}

	return [...rows, `${axis.trimEnd()}${unit}`];
}
