/** Changes between two words that still pass for a slip of the finger, for words of this length. */
function slipsAllowed(length: number): number {
	return length <= 3 ? 1 : length <= 6 ? 2 : 3;
}

/**
The known words that a mistyped one may have meant, closest first, at most three.

@param word - As typed.
@param known - The words there are.
*/
export function nearest(word: string, known: readonly string[]): string[] {
	const typed = word.toLowerCase();
	return known
		.map(name => ({name, slips: slipsBetween(typed, name.toLowerCase())}))
		.filter(
			({name, slips}) => slips <= slipsAllowed(Math.max(typed.length, name.length)) || startsAs(name, typed),
		)
		.toSorted((a, b) => a.slips - b.slips)
		.slice(0, 3)
		.map(({name}) => name);
}

function startsAs(name: string, typed: string): boolean {
	return typed.length >= 2 && name.toLowerCase().startsWith(typed);
}

/**
Edits from one word to the other: a letter missing, added, replaced, or two neighbours swapped.

@see Restricted Damerau-Levenshtein distance (optimal string alignment).
*/
function slipsBetween(from: string, to: string): number {
	const rows: number[][] = [Array.from({length: to.length + 1}, (_, index) => index)];
	for (let i = 1; i <= from.length; i++) {
		const row = [i];
		for (let j = 1; j <= to.length; j++) {
			const isSame = from[i - 1] === to[j - 1];
			let least = Math.min(rows[i - 1]![j]! + 1, row[j - 1]! + 1, rows[i - 1]![j - 1]! + (isSame ? 0 : 1));
			const isSwap = i > 1 && j > 1 && from[i - 1] === to[j - 2] && from[i - 2] === to[j - 1];
			if (isSwap) least = Math.min(least, rows[i - 2]![j - 2]! + 1);
			row.push(least);
		}

		rows.push(row);
	}

	return rows[from.length]![to.length]!;
}
