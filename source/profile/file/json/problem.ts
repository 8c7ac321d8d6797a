/** Where a value stands in a profile: keys and indices from the top. */
export type Path = ReadonlyArray<string | number>;

/** What is wrong at one place of a file, in words. */
export type Problem = {
	/** Such as `tape[3].metres`; empty where it concerns the whole file. */
	readonly path: string;
	/** What stands there, shortened. */
	readonly value: string;
	readonly expected: string;
	readonly remedy: string;
	/** Line in the file, from 1, where known. */
	readonly line?: number;
	/** Column in the line, from 1, for faults in the JSON itself. */
	readonly column?: number;
};

/** A problem before its place is put in words. */
export type Found = {
	readonly path: Path;
	readonly value: unknown;
	readonly expected: string;
	readonly remedy: string;
};

export function pathText(path: Path): string {
	let text = '';
	for (const part of path) {
		if (typeof part === 'number') text += `[${part}]`;
		else if (/^[A-Za-z_][\w-]*$/.test(part)) text += text === '' ? part : `.${part}`;
		else text += `[${JSON.stringify(part)}]`;
	}

	return text;
}

/** A value of a file, short enough for a sentence. */
export function valueText(value: unknown): string {
	if (value === undefined) return 'nothing';
	if (value === Infinity || value === -Infinity) return 'a number too large to hold';
	if (Array.isArray(value)) return value.length === 0 ? 'an empty list' : `a list of ${value.length}`;
	if (typeof value === 'object' && value !== null) return 'an object';
	const text = JSON.stringify(value) ?? String(value);
	return text.length > 60 ? `${text.slice(0, 57)}…` : text;
}

/** One problem as a sentence or two for people. */
export function problemText({path, value, expected, remedy, line, column}: Problem): string {
	const place = [
		path,
		line === undefined ? '' : `line ${line}${column === undefined ? '' : `, column ${column}`}`,
	]
		.filter(part => part !== '')
		.join(', ');
	return `${place === '' ? '' : `${place}: `}${value}, expected ${expected}. ${remedy}`.trim();
}

/**
Problems as lines for people.

@param most - How many to write out; the rest is counted.
*/
export function problemLines(problems: readonly Problem[], most = 20): string[] {
	const lines = problems.slice(0, most).map(problem => problemText(problem));
	const more = problems.length - lines.length;
	return more > 0 ? [...lines, `and ${more} more`] : lines;
}
