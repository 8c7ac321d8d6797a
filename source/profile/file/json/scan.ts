import type {Path} from './problem.ts';

/** What is wrong with a JSON text, and where. */
export type Fault = {readonly offset: number; readonly found: string; readonly expected: string};

const space = /[ \t\n\r]*/y;
const numberPattern = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
const literal = /true|false|null/y;
const word = /[^\s,:{}[\]"]{1,20}/y;
const escapeTail = /["\\/bfnrt]|u[\da-fA-F]{4}/y;

/** What the end of a file may leave of a number or a word. */
const begun = /^(?:-|\.|[eE][+-]?|t|tr|tru|f|fa|fal|fals|n|nu|nul)$/;

function matchAt(pattern: RegExp, text: string, offset: number): string {
	pattern.lastIndex = offset;
	return pattern.exec(text)?.[0] ?? '';
}

/** End of the string that starts at `start`, or the fault in it. A loop, since patterns overflow on strings of megabytes. */
function endOfString(text: string, start: number): number | Fault {
	let offset = start + 1;
	while (offset < text.length) {
		const code = text.charCodeAt(offset);
		if (code === 34) return offset + 1;
		if (code < 32) {
			const isLineEnd = code === 10 || code === 13;
			return {
				offset,
				found: isLineEnd ? 'the end of the line' : 'a control character',
				expected: 'the closing quote of the text before it',
			};
		}

		if (code === 92) {
			const escaped = matchAt(escapeTail, text, offset + 1);
			if (escaped === '' && offset + 1 < text.length) {
				return {
					offset,
					found: `\\${text[offset + 1]}`,
					expected: 'a backslash only before one of "\\/bfnrtu',
				};
			}

			offset += 1 + escaped.length;
		} else {
			offset++;
		}
	}

	return {offset: text.length, found: 'the end of the file', expected: 'the closing quote of a text'};
}

type Frame = {readonly isList: boolean; key: string | number};

/**
Goes through a JSON text without recursion.

@param onValue - Called at the start of each value with its path (valid during the call) and offset.
@returns The first fault, or undefined where the text is JSON.
*/
export function scanJson(
	text: string,
	onValue: (path: Path, offset: number) => void = () => {},
): Fault | undefined {
	const frames: Frame[] = [];
	let offset = 0;
	let expects: 'value' | 'value or end' | 'key' | 'key or end' | 'comma or end' = 'value';
	const faultHere = (expected: string): Fault => {
		// A number or a word of JSON that has only begun is a file cut short, not a wrong character.
		if (frames.length > 0 && text.length - offset <= 4 && begun.test(text.slice(offset)))
			offset = text.length;
		const found =
			offset >= text.length ? 'the end of the file' : `“${matchAt(word, text, offset) || text[offset]}”`;
		return {offset, found, expected};
	};

	const closing = () => (frames.at(-1)!.isList ? ']' : '}');
	for (;;) {
		offset += matchAt(space, text, offset).length;
		const sign = text[offset];
		if (expects === 'comma or end') {
			if (frames.length === 0)
				return offset < text.length ? faultHere('nothing after the closing brace') : undefined;
			const frame = frames.at(-1)!;
			if (sign === closing()) {
				frames.pop();
				offset++;
			} else if (sign === ',') {
				offset++;
				if (typeof frame.key === 'number') frame.key++;
				expects = frame.isList ? 'value' : 'key';
			} else {
				return faultHere(`a comma or ${closing()}`);
			}

			continue;
		}

		if ((expects === 'value or end' && sign === ']') || (expects === 'key or end' && sign === '}')) {
			frames.pop();
			offset++;
			expects = 'comma or end';
			continue;
		}

		if (expects === 'key' || expects === 'key or end') {
			if (sign !== '"') return faultHere('a name in double quotes');
			const end = endOfString(text, offset);
			if (typeof end !== 'number') return end;
			frames.at(-1)!.key = JSON.parse(text.slice(offset, end)) as string;
			offset = end;
			offset += matchAt(space, text, offset).length;
			if (text[offset] !== ':') return faultHere('a colon after the name');
			offset++;
			expects = 'value';
			continue;
		}

		onValue(
			frames.map(({key}) => key),
			offset,
		);
		if (sign === '{' || sign === '[') {
			frames.push({isList: sign === '[', key: sign === '[' ? 0 : ''});
			offset++;
			expects = sign === '[' ? 'value or end' : 'key or end';
			continue;
		}

		if (sign === '"') {
			const end = endOfString(text, offset);
			if (typeof end !== 'number') return end;
			offset = end;
		} else {
			const plain = matchAt(literal, text, offset) || matchAt(numberPattern, text, offset);
			if (plain === '') return faultHere('a value');
			offset += plain.length;
		}

		expects = 'comma or end';
	}
}

/** Line and column of an offset, both from 1. */
export function lineAndColumn(
	text: string,
	offset: number,
): {readonly line: number; readonly column: number} {
	let line = 1;
	let start = 0;
	for (let end = text.indexOf('\n'); end !== -1 && end < offset; end = text.indexOf('\n', start)) {
		line++;
		start = end + 1;
	}

	return {line, column: offset - start + 1};
}
