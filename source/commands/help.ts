import type {Command, Flag} from './command.ts';
import {flagText, globalFlags} from './flags.ts';

/** Help of one command: usage, options, examples. */
export function commandHelp(command: Command): string {
	const {name, summary, takes, flags = {}, examples} = command;
	return [
		summary,
		'',
		'Usage',
		`  $ roomtare ${[name, takes, '[options]'].filter(word => word !== '').join(' ')}`,
		'',
		'Options',
		...flagLines({...flags, ...globalFlags}),
		'',
		'Examples',
		...columns(examples.map(([call, does]) => [`$ ${call}`, does])),
	].join('\n');
}

/** Help of the program: what it is, the commands there are, the options that all of them take. */
export function programHelp(
	commands: ReadonlyArray<{readonly name: string; readonly summary: string}>,
): string {
	return [
		'A companion for calibrating a home-cinema room, with a tape measure and a sound level meter',
		'',
		'Usage',
		'  $ roomtare                        Open the app',
		'  $ roomtare COMMAND [options]      Do one thing and print the result',
		'  $ roomtare COMMAND --help         Explain a command, with examples',
		'',
		'Commands',
		...columns(commands.map(({name, summary}) => [name, summary])),
		'',
		'Options',
		...flagLines(globalFlags),
		'',
		'Exit codes',
		'  0  done',
		'  1  valid, but the answer is no: nothing measured, out of range, different, missed',
		'  2  a file or a call that cannot be used; the message says why',
	].join('\n');
}

function flagLines(flags: Readonly<Record<string, Flag>>): string[] {
	return columns(
		Object.entries(flags).map(([key, flag]) => {
			const short = flag.shortFlag ? `, -${flag.shortFlag}` : '';
			const value = flag.type === 'boolean' ? '' : ` ${flag.value ?? flag.type.toUpperCase()}`;
			const choices = flag.choices ? `: ${flag.choices.join(', ')}` : '';
			const usual = flag.default === undefined ? '' : `; ${flag.default} where not given`;
			return [`${flagText(key)}${short}${value}`, `${flag.help}${choices}${usual}`];
		}),
	);
}

function columns(rows: ReadonlyArray<readonly [string, string]>): string[] {
	const width = Math.max(...rows.map(([left]) => left.length));
	return rows.map(([left, right]) => `  ${left.padEnd(width)}  ${right}`);
}
