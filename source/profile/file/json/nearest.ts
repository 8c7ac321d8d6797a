/** Number of single edits (insert, delete, replace, swap of neighbours) between two short words, case ignored. */
export function editDistance(one: string, other: string): number {
	const a = one.toLowerCase();
	const b = other.toLowerCase();
	const rows: number[][] = [Array.from({length: b.length + 1}, (_, column) => column)];
	for (let row = 1; row <= a.length; row++) {
		const line = [row];
		for (let column = 1; column <= b.length; column++) {
			const isSame = a[row - 1] === b[column - 1];
			let cost = Math.min(
				rows[row - 1]![column]! + 1,
				line[column - 1]! + 1,
				rows[row - 1]![column - 1]! + (isSame ? 0 : 1),
			);
			const isSwap = row > 1 && column > 1 && a[row - 1] === b[column - 2] && a[row - 2] === b[column - 1];
			if (isSwap) cost = Math.min(cost, rows[row - 2]![column - 2]! + 1);
			line.push(cost);
		}

		rows.push(line);
	}

	return rows[a.length]![b.length]!;
}

/** The known name that a mistyped one is nearest to, or undefined where none is near: one edit, two for names above four letters. */
export function nearestName(name: string, known: Iterable<string>): string | undefined {
	if (name.length > 60) return undefined;
	let best: string | undefined;
	let least = (name.length > 4 ? 2 : 1) + 1;
	for (const candidate of known) {
		if (Math.abs(candidate.length - name.length) >= least) continue;
		const distance = editDistance(name, candidate);
		if (distance < least) {
			least = distance;
			best = candidate;
		}
	}

	return best;
}

/** What to do about an unknown name: the nearest one, or all that are known. */
export function nameRemedy(name: unknown, known: Iterable<string>): string {
	const names = [...known];
	const near = typeof name === 'string' ? nearestName(name, names) : undefined;
	if (near !== undefined) return `Did you mean ${near}?`;
	if (names.length === 0) return 'There is none yet. Add it first.';
	return `Known here: ${names.slice(0, 24).join(', ')}${names.length > 24 ? ', …' : ''}.`;
}
