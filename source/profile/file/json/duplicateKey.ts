import {type Path, pathText} from './problem.ts';
import {scanJson} from './scan.ts';

/**
The first name that stands twice in one object of a JSON text. Parsing keeps the last of them and drops the others
silently: a reading of the user's would be gone with the next save.

@param text - Sound JSON.
@param names - How many names are written in it.
@param value - What it was parsed to; as many names in it as in the text, and there is nothing to look for.
@returns Its path and the offset of its second value; undefined where every name stands once.
*/
export function duplicateKey(
	text: string,
	names: number,
	value: unknown,
): {readonly path: Path; readonly offset: number} | undefined {
	if (names === namesOf(value)) return undefined;
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

function namesOf(root: unknown): number {
	let count = 0;
	const open = [root];
	while (open.length > 0) {
		const one = open.pop();
		if (typeof one !== 'object' || one === null) continue;
		if (Array.isArray(one)) {
			for (const value of one) if (typeof value === 'object') open.push(value);
			continue;
		}

		// Of parsed JSON every name is the object's own.
		for (const name in one) {
			count++;
			const value = (one as Record<string, unknown>)[name];
			if (typeof value === 'object') open.push(value);
		}
	}

	return count;
}
