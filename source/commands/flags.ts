import type {Flag} from './command.ts';
import {nearestWords} from './nearest.ts';

/** Flags that every command takes; they may also stand before the command's name. */
export const globalFlags = {
	json: {type: 'boolean', help: 'Print the whole result as JSON, for scripts'},
	profiles: {type: 'string', value: 'DIR', help: 'Keep and find profiles in this folder'},
	length: {
		type: 'string',
		value: 'UNIT',
		choices: ['ft-in', 'ft', 'm', 'cm'],
		help: 'Show lengths in this unit',
	},
	help: {type: 'boolean', shortFlag: 'h', help: 'Show this help'},
	version: {type: 'boolean', help: 'Show the version'},
} as const satisfies Readonly<Record<string, Flag>>;

/** Index in the arguments of the command's name: the first word that is neither a flag nor the value of one. */
export function commandIndex(argv: readonly string[]): number {
	for (let index = 0; index < argv.length; index++) {
		const word = argv[index]!;
		// What follows is meant as it stands: first the command's name.
		if (word === '--') return index + 1 < argv.length ? index + 1 : -1;
		if (!word.startsWith('-') || word === '-') return index;
		if (word.startsWith('--') && takesValue(word.slice(2))) index++;
	}

	return -1;
}

function takesValue(name: string): boolean {
	return Object.entries(globalFlags).some(([key, {type}]) => key === name && type === 'string');
}

/** `addedDelay` as it is typed: `--added-delay`. */
export function flagText(key: string): string {
	return key.length === 1 ? `-${key}` : `--${key.replace(/[A-Z]/g, letter => `-${letter.toLowerCase()}`)}`;
}

/**
Everything that is wrong with the flags of a call, one sentence each.

@param given - Flags as the parser read them: an empty text where the value is missing, NaN where it is no number.
@param known - The command's flags and the global ones.
*/
export function flagProblems(
	given: Readonly<Record<string, unknown>>,
	known: Readonly<Record<string, Flag>>,
): string[] {
	return Object.entries(given).flatMap(([key, value]) => {
		const flag = Object.hasOwn(known, key) ? known[key] : undefined;
		if (!flag) return [unknownFlag(key, known)];
		return [value].flat().flatMap(single => valueProblems(key, flag, single));
	});
}

function unknownFlag(key: string, known: Readonly<Record<string, Flag>>): string {
	const near = nearestWords(key, Object.keys(known)).map(name => flagText(name));
	const remedy =
		near.length > 0 ? `Did you mean ${near.join(' or ')}?` : 'See --help for the options there are.';
	return `${flagText(key)}: no such option. ${remedy}`;
}

function valueProblems(key: string, flag: Flag, value: unknown): string[] {
	if (value === undefined) return [];
	const name = flagText(key);
	const choices = flag.choices ? `one of ${flag.choices.join(', ')}` : (flag.value ?? 'a value');
	if (flag.type === 'string' && value === '') return [`${name}: the value is missing. Expected ${choices}.`];
	if (flag.type === 'number' && !Number.isFinite(value)) return [`${name}: expected a number.`];
	// Called COUNT, it counts.
	if (flag.value === 'COUNT' && !(Number.isSafeInteger(value) && (value as number) >= 0))
		return [`${name}: ${String(value)} is no count. Expected a whole number from 0 up.`];
	if (flag.choices && !flag.takesOthers && !flag.choices.includes(String(value))) {
		return [`${name}: “${String(value)}” is not a choice. Expected ${choices}.`];
	}

	return [];
}
