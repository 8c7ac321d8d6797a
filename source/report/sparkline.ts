const bars = '▁▂▃▄▅▆▇█';

/**
Values as a row of bars, one cell each, from the smallest to the largest.

@param values - Shape (n); `undefined` leaves a gap.
@param cells - Largest number of cells; more values are averaged in groups of neighbours.
@param leastSpan - Values that differ by less than this in all are drawn flat, for their noise is not worth a look.
*/
export function sparkline(values: ReadonlyArray<number | undefined>, cells: number, leastSpan = 0): string {
	const count = Math.min(cells, values.length);
	const groups = Array.from({length: count}, (_, cell) => {
		const from = Math.floor((cell * values.length) / count);
		const to = Math.floor(((cell + 1) * values.length) / count);
		const known = values.slice(from, to).filter(value => value !== undefined);
		return known.length === 0 ? undefined : known.reduce((sum, value) => sum + value, 0) / known.length;
	});
	const known = groups.filter(value => value !== undefined);
	const low = Math.min(...known);
	const span = Math.max(...known) - low;
	const isFlat = span <= leastSpan;
	return groups
		.map(value => {
			if (value === undefined) return ' ';
			return isFlat
				? bars[3]
				: bars[Math.min(bars.length - 1, Math.floor(((value - low) / span) * bars.length))];
		})
		.join('');
}
