/**
A tape measure across the screen: one mark for each question of a stop, heavy as far as they are answered, the
pointer where one stands. Where there are more questions than cells, marks are left out and the proportion stays.

@param answered - For each question whether it is answered.
@param at - Index of the current question.
@param columns - Cells at hand.
*/
export function tapeRule(answered: readonly boolean[], at: number, columns: number): string {
	if (answered.length === 0 || columns < 2) return '';
	const last = columns - 1;
	const stopAt = (index: number) =>
		answered.length === 1 ? 0 : Math.round((index * last) / (answered.length - 1));
	const hasMarks = answered.length * 2 <= columns;
	const cells = Array.from({length: columns}, () => '─');
	for (const [index, isAnswered] of answered.entries()) {
		const from = stopAt(index);
		const to = index + 1 < answered.length ? stopAt(index + 1) : columns;
		if (isAnswered) cells.fill('━', from, to);
		if (hasMarks) cells[from] = isAnswered ? '┻' : '┴';
	}

	cells[stopAt(at)] = '▼';
	return cells.join('');
}
