import {type Path, pathText} from './problem.ts';
import {scanJson} from './scan.ts';

/**
The first name that stands twice in one object of a JSON text. Parsing keeps the last of them and drops the others
silently: a reading of the user's would be gone with the next save.

@param text - Sound JSON.
@param value - What it was parsed to; as many names in it as in the text, and there is nothing to look for.
@returns Its path and the offset of its second value; undefined where every name stands once.
*/
export function duplicateKey(
	text: string,
	value: unknown,
): {readonly path: Path; readonly offset: number} | undefined {
	if (namesIn(text) === namesOf(value)) return undefined;
	const seen = new Set<string>();
	let found: {readonly path: Path; readonly offset: number} | undefined;
	scanJson(text, (path, offset) => {
		if (found || path.length === 0) return;
		const name = pathText(path);
		if (seen.has(name)) found = {path, offset};
		seen.add(name);
	});
	return found;
}

/** Texts with a colon after them. */
function namesIn(text: string): number {
	let count = 0;
	for (let start = text.indexOf('"'); start !== -1; ) {
		let end = text.indexOf('"', start + 1);
		while (end !== -1 && isEscaped(text, end)) end = text.indexOf('"', end + 1);
		if (end === -1) return count;
		let after = end + 1;
		while (text.charCodeAt(after) <= 32) after++;
		if (text[after] === ':') count++;
		start = text.indexOf('"', end + 1);
	}

	return count;
}

function isEscaped(text: string, at: number): boolean {
	let backslashes = 0;
	while (text[at - 1 - backslashes] === '\\') backslashes++;
	return backslashes % 2 === 1;
}

function namesOf(root: unknown): number {
	let count = 0;
	const open = [root];
	while (open.length > 0) {
		const one = open.pop();
		if (typeof one !== 'object' || one === null) continue;
		const isList = Array.isArray(one);
		for (const value of Object.values(one)) {
			if (!isList) count++;
			if (typeof value === 'object' && value !== null) open.push(value);
		}
	}

	return count;
}
