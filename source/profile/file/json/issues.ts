import type {z} from 'zod';
import {nameRemedy, nearestName} from './nearest.ts';
import type {Found, Path} from './problem.ts';

type Issue = z.core.$ZodIssue;

const typeWords: Readonly<Record<string, string>> = {
	string: 'a text in quotes',
	number: 'a number',
	int: 'a whole number',
	boolean: 'true or false',
	array: 'a list',
	tuple: 'a list',
	object: 'an object',
	record: 'an object',
};

const formatWords: Readonly<Record<string, string>> = {
	date: 'a date like 2026-04-18',
	datetime: 'a date with time like 2026-04-18T20:15:00Z',
};

/** The value at a path, or undefined. Only own keys count. */
export function valueAt(root: unknown, path: Path): unknown {
	let value = root;
	for (const key of path) {
		if (typeof value !== 'object' || value === null || !Object.hasOwn(value, key)) return undefined;
		value = (value as Record<string | number, unknown>)[key];
	}

	return value;
}

function sizeWords(
	issue: {readonly origin: string; readonly inclusive?: boolean},
	limit: number | bigint,
	word: 'at most' | 'at least',
): string {
	if (issue.origin === 'string')
		return Number(limit) === 1 && word === 'at least'
			? 'a text that is not empty'
			: `${word} ${limit} characters`;
	if (issue.origin === 'array') return `${word} ${limit} ${Number(limit) === 1 ? 'entry' : 'entries'}`;
	const text = String(limit).replace('-', '−');
	if (issue.inclusive === false) return `a number ${word === 'at least' ? 'above' : 'below'} ${text}`;
	return `${word} ${text}`;
}

function typeRemedy(value: unknown, expected: string): string {
	if (value === undefined) return 'Add it.';
	const isQuoted =
		typeof value === 'string' && value.trim() !== '' && Number.isFinite(Number(value.replace(',', '.')));
	if (expected === 'number' && isQuoted) return 'Write the number without quotes, with a decimal point.';
	if (value === null) return 'Leave the key out where nothing is known.';
	return 'Correct it.';
}

/** Branches of a union whose value has the right type but something wrong inside; else nothing. */
function insideUnion(issue: Extract<Issue, {code: 'invalid_union'}>): readonly Issue[] | undefined {
	return issue.errors.find(
		branch =>
			!branch.some(
				inner => inner.path.length === 0 && ['invalid_type', 'invalid_value'].includes(inner.code),
			),
	);
}

/**
An issue of the schema in plain words; a union may give several.

@param root - The value that was checked, to quote from.
*/
export function foundFromIssue(issue: Issue, root: unknown, base: Path = []): Found[] {
	const path: Path = [...base, ...issue.path.map(part => (typeof part === 'symbol' ? String(part) : part))];
	const value = valueAt(root, path);
	const one = (expected: string, remedy: string): Found[] => [{path, value, expected, remedy}];
	switch (issue.code) {
		case 'invalid_type':
			return one(typeWords[issue.expected] ?? issue.expected, typeRemedy(value, issue.expected));
		case 'too_big':
			return one(sizeWords(issue, issue.maximum, 'at most'), 'Check the value and its unit.');
		case 'too_small':
			return one(
				sizeWords(issue, issue.minimum, 'at least'),
				issue.origin === 'array' ? 'Add what is missing.' : 'Check the value and its unit.',
			);
		case 'invalid_format':
			return one(formatWords[issue.format] ?? issue.message, 'Correct it.');
		case 'invalid_value': {
			const names = issue.values.map(String);
			const expected =
				names.length === 1 ? names[0]! : names.length > 8 ? 'a known name' : `one of ${names.join(', ')}`;
			if (value === undefined) return one(expected, 'Add it.');
			const isName =
				typeof value === 'string' && (names.length > 8 || nearestName(value, names) !== undefined);
			return one(expected, isName ? nameRemedy(value, names) : 'Correct it.');
		}

		case 'invalid_union': {
			const inside = insideUnion(issue);
			if (inside && issue.errors.length > 0)
				return inside.flatMap(inner => foundFromIssue(inner, root, path));
			if ('options' in issue && Array.isArray(issue.options)) {
				return one(`one of ${issue.options.join(', ')}`, value === undefined ? 'Add it.' : 'Correct it.');
			}

			const branches = issue.errors.flatMap(branch =>
				branch.slice(0, 1).flatMap(inner => foundFromIssue(inner, root, path)),
			);
			return one(
				[...new Set(branches.map(({expected}) => expected))].join(' or '),
				value === undefined ? 'Add it.' : 'Correct it.',
			);
		}

		case 'unrecognized_keys':
			return issue.keys.map(key => ({
				path: [...path, key],
				value: key,
				expected: 'a channel abbreviation',
				remedy: 'Correct the name, or take it out.',
			}));
		case 'invalid_key':
			return one('a known name as key', 'Correct the name, or take it out.');
		default:
			return one(issue.message, 'Correct it.');
	}
}
