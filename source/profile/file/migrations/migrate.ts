import type {Found} from '../json/problem.ts';

export type JsonObject = Readonly<Record<string, unknown>>;

/** One step from an older format to the next. Pure: gives a new object and leaves the old one as it was. */
export type Migration = {
	readonly from: number;
	readonly to: number;
	readonly apply: (file: JsonObject) => JsonObject;
};

export type Migrated =
	| {readonly ok: true; readonly file: JsonObject; readonly from: number}
	| {readonly ok: false; readonly found: Found};

/**
Brings a file to the current format, step by step.

@param migrations - In any order; each `from` at most once.
@returns The file with `format` set to `current`, or what is wrong with its format.
*/
export function migrate(file: JsonObject, migrations: readonly Migration[], current: number): Migrated {
	const from = Object.hasOwn(file, 'format') ? file.format : undefined;
	const refuse = (expected: string, remedy: string): Migrated => ({
		ok: false,
		found: {path: ['format'], value: from, expected, remedy},
	});
	if (typeof from !== 'number' || !Number.isInteger(from) || from < 0) {
		const remedy = from === undefined ? `Add "format": ${current}, if this is a profile.` : 'Correct it.';
		return refuse(`the format of the file, a whole number up to ${current}`, remedy);
	}

	if (from > current) {
		return refuse(
			`format ${current} or older`,
			`The file is in format ${from}, this program reads up to format ${current}. Take a newer version of the program.`,
		);
	}

	let result = file;
	let format = from;
	while (format < current) {
		const step = migrations.find(migration => migration.from === format && migration.to > format);
		if (!step)
			return refuse(`format ${current}`, `Nothing leads from format ${format} to format ${current}.`);
		result = {...step.apply(result), format: step.to};
		format = step.to;
	}

	return {ok: true, file: result, from};
}
