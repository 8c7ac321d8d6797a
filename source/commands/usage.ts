import type {Command} from './command.ts';

/** How many arguments a command takes, read from its own words: `PROFILE`, `[PROFILE]`, `OLD NEW`, `FILE...`. */
export function argumentRange(takes: string): {readonly least: number; readonly most: number} {
	const words = takes.split(/\s+/).filter(word => word !== '');
	return {
		least: words.filter(word => !word.startsWith('[')).length,
		most: words.some(word => word.includes('...')) ? Infinity : words.length,
	};
}

/** What is wrong with the number of arguments, in words; empty where nothing is. */
export function argumentProblems({name, takes}: Command, input: readonly string[]): string[] {
	const {least, most} = argumentRange(takes);
	if (input.length >= least && input.length <= most) return [];
	const call = `roomtare ${name}${takes ? ` ${takes}` : ''}`;
	if (input.length < least) {
		const missing = takes.split(/\s+/).slice(input.length, least).join(' ');
		return [`${name}: ${missing} is missing. Usage: ${call}`];
	}

	return [`${name}: “${input[most]}” is one argument too many. Usage: ${call}`];
}
