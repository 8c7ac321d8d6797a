/**
Offset at which a JSON text first nests deeper than allowed, or −1. A loop over the characters, so that no depth overflows.

@param most - Deepest nesting allowed; 1 is a list or object without any in it.
*/
export function tooDeepAt(text: string, most: number): number {
	let depth = 0;
	for (let offset = 0; offset < text.length; offset++) {
		switch (text.charCodeAt(offset)) {
			case 34: {
				// To the closing quote: the next one that no odd number of backslashes stands before.
				for (;;) {
					offset = text.indexOf('"', offset + 1);
					if (offset === -1) return -1;
					let slashes = 0;
					while (text.charCodeAt(offset - 1 - slashes) === 92) slashes++;
					if (slashes % 2 === 0) break;
				}

				break;
			}

			case 91:
			case 123:
				if (++depth > most) return offset;
				break;
			case 93:
			case 125:
				depth--;
				break;
			default:
		}
	}

	return -1;
}
