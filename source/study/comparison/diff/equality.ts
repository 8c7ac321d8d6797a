import type {FieldChange} from './profileDiff.ts';

const isRecord = (value: unknown): value is Record<string, unknown> =>
	typeof value === 'object' && value !== null && !Array.isArray(value);

/** Whether two JSON values say the same. The order of keys says nothing; a missing key equals `undefined`. */
export function isSameValue(a: unknown, b: unknown): boolean {
	if (Object.is(a, b) || (a === 0 && b === 0)) return true;
	if (Array.isArray(a) && Array.isArray(b)) {
		return a.length === b.length && a.every((value, index) => isSameValue(value, b[index]));
	}

	if (!isRecord(a) || !isRecord(b)) return false;
	return [...new Set([...Object.keys(a), ...Object.keys(b)])].every(key => isSameValue(a[key], b[key]));
}

/** The leaves in which two JSON values differ, each with its path; lists are compared whole. */
export function differingFields(before: unknown, after: unknown, path = ''): FieldChange[] {
	if (isSameValue(before, after)) return [];
	if (!isRecord(before) || !isRecord(after)) return [{path, before, after}];
	const keys = [...new Set([...Object.keys(before), ...Object.keys(after)])];
	return keys.flatMap(key => differingFields(before[key], after[key], path ? `${path}.${key}` : key));
}
