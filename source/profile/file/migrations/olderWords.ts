import type {JsonObject} from './migrate.ts';

const isObject = (value: unknown): value is JsonObject =>
	typeof value === 'object' && value !== null && !Array.isArray(value);

/** Values of an outlet's `kind` that had another name before, in files of the same format. */
const outletKinds: Readonly<Record<string, string>> = {'battery backup': 'ups'};

/**
Puts today's words where a file of the current format holds an older one.

@param file - Any object, sound or not. It is left as it was.
@returns The file itself where it holds no older word, else a copy of it with today's.
*/
export function withTodaysWords(file: JsonObject): JsonObject {
	const {wiring} = file;
	if (!isObject(wiring) || !Array.isArray(wiring.outlets)) return file;
	const outlets: readonly unknown[] = wiring.outlets;
	const nameOf = (outlet: unknown) =>
		isObject(outlet) && typeof outlet.kind === 'string' && Object.hasOwn(outletKinds, outlet.kind)
			? outletKinds[outlet.kind]
			: undefined;
	if (!outlets.some(outlet => nameOf(outlet))) return file;
	return {
		...file,
		wiring: {
			...wiring,
			outlets: outlets.map(outlet =>
				nameOf(outlet) ? {...(outlet as JsonObject), kind: nameOf(outlet)} : outlet,
			),
		},
	};
}
