#!/usr/bin/env node
import type {AnyFlags} from 'meow';
import {type Command, type CommandContext, type ExitCode, exitCode, type Flag} from './commands/command.ts';
import {sayFailure} from './commands/failure.ts';
import {commandIndex, flagProblems, globalFlags} from './commands/flags.ts';
import {commandHelp, programHelp} from './commands/help.ts';
import {nearestWords} from './commands/nearest.ts';
import {home, registry} from './commands/registry.ts';
import {argumentProblems} from './commands/usage.ts';
import {processTerminal, type Terminal} from './platform/terminal.ts';
import {Trouble} from './platform/trouble.ts';
import {version} from './platform/version.ts';

type Flags = Readonly<Record<string, unknown>>;
type Call = {readonly command: Command | undefined; readonly input: readonly string[]; readonly flags: Flags};

// What has something to put in order, such as the app, listens itself and ends with the same code.
process.on('SIGINT', () => {
	if (process.listenerCount('SIGINT') === 1) process.exit(exitCode.interrupted);
});
void main(process.argv.slice(2)).then(code => {
	process.exitCode = code;
});

async function main(argv: readonly string[]): Promise<ExitCode> {
	const terminal = processTerminal();
	try {
		// The commonest questions need no argument parser.
		if (argv.length === 1 && argv[0] === '--version') {
			terminal.out(version);
			return exitCode.fine;
		}

		if (argv.length === 1 && (argv[0] === '--help' || argv[0] === '-h')) {
			terminal.out(programHelp(registry));
			return exitCode.fine;
		}

		const {command, input, flags} = await readCall(argv);
		if (flags.version || flags.help) {
			terminal.out(flags.version ? version : command ? commandHelp(command) : programHelp(registry));
			return exitCode.fine;
		}

		const {run} = command ?? (await home()).command;
		return await run(contextOf(terminal, input, flags));
	} catch (error) {
		const end = argv.indexOf('--');
		const isForScript = argv.slice(0, end === -1 ? undefined : end).includes('--json');
		return sayFailure(
			error,
			terminal.say,
			Boolean(process.env.ROOMTARE_DEBUG),
			isForScript ? terminal.out : undefined,
		);
	}
}

/** Not spread: what the terminal is like is only looked up when a command asks. */
function contextOf(terminal: Terminal, input: readonly string[], flags: Flags): CommandContext {
	return Object.defineProperties(
		{input, flags},
		Object.getOwnPropertyDescriptors(terminal),
	) as CommandContext;
}

/** The command and what is given to it. All that is wrong with the call is told at once. */
async function readCall(argv: readonly string[]): Promise<Call> {
	const at = commandIndex(argv);
	const [command, {default: meow}] = await Promise.all([
		at === -1 ? undefined : findCommand(argv[at]!),
		import('meow'),
	]);
	const known: Readonly<Record<string, Flag>> = {...command?.flags, ...globalFlags};
	let call: {readonly input: readonly string[]; readonly flags: Flags};
	try {
		call = meow({
			importMeta: {url: import.meta.url} as ImportMeta,
			argv: argv.filter((_, index) => index !== at),
			// Without it the parser looks for a package.json on the disk.
			pkg: {},
			autoHelp: false,
			autoVersion: false,
			booleanDefault: undefined,
			flags: parserFlags(known),
		});
	} catch (error) {
		throw new Trouble(error instanceof Error ? error.message : String(error));
	}

	const isQuestion = call.flags.help === true || call.flags.version === true;
	const problems = [
		...flagProblems(call.flags, known),
		...(command && !isQuestion ? argumentProblems(command, call.input) : []),
	];
	if (problems.length > 0) throw new Trouble(problems);
	return {command, input: call.input, flags: call.flags};
}

/** The parser gets no choices and no help: their faults are told in our own words, all at once. */
function parserFlags(known: Readonly<Record<string, Flag>>): AnyFlags {
	const entries = Object.entries(known).map(([key, {type, shortFlag, isMultiple, default: usual}]) => [
		key,
		{
			type,
			...(shortFlag && {shortFlag}),
			...(isMultiple && {isMultiple}),
			...(usual !== undefined && {default: usual}),
		},
	]);
	return Object.fromEntries(entries);
}

async function findCommand(name: string): Promise<Command> {
	const entry = registry.find(command => command.name === name);
	if (entry) return (await entry.load()).command;
	const near = nearestWords(
		name,
		registry.map(command => command.name),
	);
	const remedy =
		near.length > 0 ? `Did you mean ${near.join(' or ')}?` : 'roomtare --help lists the commands.';
	throw new Trouble(`“${name}” is not a command. ${remedy}`);
}
