import type {Profile} from '../types.ts';
import {visibleText} from '../visibleText.ts';
import {pathText, valueText} from './json/problem.ts';
import {keyOrder} from './keyOrder.ts';

/** Lists of which each entry takes one line, so that a reading more is one line more in a diff. */
const oneLineLists: ReadonlySet<string> = new Set([
	'tape',
	'meter',
	'recordings',
	'responses',
	'wiring.connections',
	'wiring.parallelRuns',
	'wiring.outlets',
	'wiring.loads',
	'wiring.equipment',
]);

const curves = 'responses';

type Entry = readonly [key: string, value: unknown];

function entriesOf(value: object, kind: string | undefined): Entry[] {
	const order = kind === undefined ? [] : (keyOrder[kind] ?? []);
	const known = order
		.filter(key => Object.hasOwn(value, key))
		.map((key): Entry => [key, (value as Record<string, unknown>)[key]]);
	const others = Object.entries(value).filter(([key]) => !order.includes(key));
	const all = [...known, ...others].filter(([, entry]) => entry !== undefined);
	// Curves stand last whatever else a file holds: who needs none of them stops reading there.
	return kind === ''
		? [...all.filter(([key]) => key !== curves), ...all.filter(([key]) => key === curves)]
		: all;
}

function isScalar(value: unknown): boolean {
	return typeof value !== 'object' || value === null;
}

type JsonPlace = {
	readonly path: ReadonlyArray<string | number>;
	readonly indent: string;
	readonly isOneLine: boolean;
};

function write(value: unknown, {path, indent, isOneLine}: JsonPlace): string {
	if (isScalar(value)) {
		const text = typeof value === 'number' && !Number.isFinite(value) ? undefined : JSON.stringify(value);
		if (text === undefined) throw new RangeError(`${pathText(path)} cannot be stored: ${valueText(value)}`);
		return text;
	}

	const inner = `${indent}\t`;
	const isList = Array.isArray(value);
	const isTight = isOneLine || (isList && value.every(entry => isScalar(entry)));
	// The name of the list whose entry this is, at the top of the profile.
	const kind =
		path.length === 0 ? '' : path.length === 2 && typeof path[1] === 'number' ? String(path[0]) : undefined;
	const isRowList = isList && oneLineLists.has(path.join('.'));
	const parts = isList
		? value.map((entry, index) =>
				write(entry, {path: [...path, index], indent: inner, isOneLine: isTight || isRowList}),
			)
		: entriesOf(value as object, kind).map(
				([key, entry]) =>
					`${JSON.stringify(key)}: ${write(entry, {path: [...path, key], indent: inner, isOneLine: isTight})}`,
			);
	const [open, close] = isList ? ['[', ']'] : ['{', '}'];
	if (parts.length === 0) return `${open}${close}`;
	if (isTight) return `${open}${parts.join(', ')}${close}`;
	return `${open}\n${inner}${parts.join(`,\n${inner}`)}\n${indent}${close}`;
}

/**
A profile as the text of its file: JSON, indented by tabs, known keys in the order of the schema, unknown keys kept,
each reading on a line of its own, a line end at the end.

@throws {RangeError} If a value is not finite or cannot stand in JSON; nothing half right is ever written.
*/
export function serialiseProfile(profile: Profile): string {
	return `${visibleText(write(profile, {path: [], indent: '', isOneLine: false}))}\n`;
}
