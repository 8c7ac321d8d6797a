import {currentFormat} from '../format.ts';
import type {Profile} from '../types.ts';
import {decodeText} from './json/decode.ts';
import {duplicateKey} from './json/duplicateKey.ts';
import {foundFromIssue} from './json/issues.ts';
import {nestingOf} from './json/nesting.ts';
import {type Found, type Path, type Problem, pathText, valueText} from './json/problem.ts';
import {withoutPrototypeKeys} from './json/prototypeKeys.ts';
import {lineAndColumn, scanJson} from './json/scan.ts';
import {migrations as knownMigrations} from './migrations/index.ts';
import {type JsonObject, type Migration, migrate} from './migrations/migrate.ts';
import {withTodaysWords} from './migrations/olderWords.ts';
import {findRuleProblems} from './rules.ts';
import {isCertainlySound} from './soundness.ts';
import {wholeSchema} from './wholeSchema.ts';

export {type Problem, problemLines, problemText} from './json/problem.ts';

/** Deepest nesting of lists and objects in a file. */
const deepestNesting = 64;
/** Lines are looked up for so many problems; nobody reads more at once. */
const mostPlaced = 200;

export type Parsed =
	| {
			readonly ok: true;
			readonly profile: Profile;
			/** Where it was read from, for words. */
			readonly place: string;
			/** Older format that it was brought up from. */
			readonly migratedFrom?: number;
	  }
	| {readonly ok: false; readonly place: string; readonly problems: readonly Problem[]};

/**
Reads a profile and finds everything that is wrong with it at once.

@param input - Bytes of a file, or its text.
@param place - Where it came from, for words.
@param options - `migrations` and `format` replace the real ones in tests of the mechanism.
@returns The profile with its unknown keys kept, or all problems in file order of their kind. Never throws on any input.
*/
export function parseProfile(
	input: Uint8Array | string,
	place: string,
	{migrations = knownMigrations}: {readonly migrations?: readonly Migration[]} = {},
): Parsed {
	const fail = (...problems: readonly Problem[]): Parsed => ({ok: false, place, problems});
	const decoded = decodeText(input);
	if ('problem' in decoded) return fail(decoded.problem);
	const {text} = decoded;
	const {deepAt, names} = nestingOf(text, deepestNesting);
	if (deepAt >= 0) {
		const expected = `at most ${deepestNesting} lists and objects within each other`;
		return fail({
			path: '',
			...lineAndColumn(text, deepAt),
			value: 'Deeper nesting',
			expected,
			remedy: 'This can be no profile. Check the file.',
		});
	}

	let raw: unknown;
	try {
		raw = JSON.parse(text);
	} catch {
		return fail(syntaxProblem(text));
	}

	if (typeof raw !== 'object' || raw === null || Array.isArray(raw)) {
		const value = Array.isArray(raw) ? 'A list' : `Only ${valueText(raw)}`;
		return fail({
			path: '',
			line: 1,
			value,
			expected: 'an object with a profile in it',
			remedy: 'Check the file name.',
		});
	}

	const twice = duplicateKey(text, names, raw);
	if (twice) {
		return fail({
			path: pathText(twice.path),
			line: lineAndColumn(text, twice.offset).line,
			value: `“${String(twice.path.at(-1))}” a second time`,
			expected: 'each name once',
			remedy: 'Take one of them out; only the last would be read.',
		});
	}

	const migrated = migrate(withoutPrototypeKeys(raw, text) as JsonObject, migrations, currentFormat);
	if (!migrated.ok) return fail(...placed([migrated.found], text));
	const file = withTodaysWords(migrated.file);
	const found = findProblems(file);
	// Lines of a file in an older format would be those of other keys.
	const isOld = migrated.from !== currentFormat;
	if (found.length > 0) return fail(...(isOld ? found.map(one => inWords(one)) : placed(found, text)));
	return {
		ok: true,
		profile: file as unknown as Profile,
		place,
		...(isOld ? {migratedFrom: migrated.from} : {}),
	};
}

/** Everything wrong with a value that ought to be a profile; empty where it is one. */
export function findProblems(file: unknown): Found[] {
	if (!isCertainlySound(file)) {
		const checked = wholeSchema().safeParse(file);
		if (!checked.success) return checked.error.issues.flatMap(issue => foundFromIssue(issue, file));
	}

	// The value itself goes on, not the schema's copy: no key is lost and their order stays.
	return findRuleProblems(file as Profile);
}

/** Problems of a value in words, without lines; empty where it is a profile. */
export function checkProfile(file: unknown): Problem[] {
	return findProblems(file).map(found => inWords(found));
}

function inWords({path, value, expected, remedy}: Found, line?: number): Problem {
	return {
		path: pathText(path),
		value: valueText(value),
		expected,
		remedy,
		...(line === undefined ? {} : {line}),
	};
}

function placed(found: readonly Found[], text: string): Problem[] {
	const wanted = new Map<string, number>();
	for (const {path} of found.slice(0, mostPlaced)) {
		// The line of a missing key is that of the object that lacks it.
		for (let length = path.length; length >= 0; length--) wanted.set(pathText(path.slice(0, length)), 0);
	}

	// Values come in the order of the text, so that its lines are counted once.
	let line = 1;
	let lineEnd = text.indexOf('\n');
	scanJson(text, (path: Path, offset) => {
		const name = pathText(path);
		if (!wanted.has(name)) return;
		for (; lineEnd !== -1 && lineEnd < offset; lineEnd = text.indexOf('\n', lineEnd + 1)) line++;
		wanted.set(name, line);
	});
	return found.map((one, index) => {
		if (index >= mostPlaced) return inWords(one);
		for (let length = one.path.length; length >= 0; length--) {
			const known = wanted.get(pathText(one.path.slice(0, length))) ?? 0;
			if (known > 0) return inWords(one, known);
		}

		return inWords(one);
	});
}

function syntaxProblem(text: string): Problem {
	const fault = scanJson(text) ?? {offset: 0, found: 'Text that is no JSON', expected: 'JSON'};
	const isCut = fault.offset >= text.length;
	return {
		path: '',
		...lineAndColumn(text, fault.offset),
		value: fault.found,
		expected: fault.expected,
		remedy: isCut
			? 'The file seems cut short. Take the previous version.'
			: 'Correct it, or take the previous version.',
	};
}
