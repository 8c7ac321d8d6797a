import {editDistance} from '../profile/file/json/nearest.ts';

/** Changes between two words that still pass for a slip of the finger, for words of this length. */
function slipsAllowed(length: number): number {
	return length <= 3 ? 1 : length <= 6 ? 2 : 3;
}

/**
The known words that a mistyped one may have meant, closest first, at most three.

@param word - As typed.
@param known - The words there are.
*/
export function nearestWords(word: string, known: readonly string[]): string[] {
	const typed = word.toLowerCase();
	return known
		.map(name => ({name, slips: editDistance(typed, name)}))
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
