/**
How deep a JSON text nests and how many names are written in it. A loop over the characters, so that no depth
overflows and nothing is parsed that should not be.

@param most - Deepest nesting allowed; 1 is a list or object without any in it.
@returns `deepAt`: offset at which it first nests deeper, or −1. `names`: colons outside of texts up to there, which in
sound JSON is one a name.
*/
export function nestingOf(text: string, most: number): {readonly deepAt: number; readonly names: number} {
	let depth = 0;
	let names = 0;
	for (let offset = 0; offset < text.length; offset++) {
		switch (text.charCodeAt(offset)) {
			case 34: {
				// To the closing quote: the next one that no odd number of backslashes stands before.
				for (;;) {
					offset = text.indexOf('"', offset + 1);
					if (offset === -1) return {deepAt: -1, names};
					let slashes = 0;
					while (text.charCodeAt(offset - 1 - slashes) === 92) slashes++;
					if (slashes % 2 === 0) break;
				}

				break;
			}

			case 58:
				names++;
				break;
			case 91:
			case 123:
				if (++depth > most) return {deepAt: offset, names};
				break;
			case 93:
			case 125:
				depth--;
				break;
			default:
		}
	}

	return {deepAt: -1, names};
}
