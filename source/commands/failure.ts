import {Trouble} from '../platform/trouble.ts';
import {type ExitCode, exitCode} from './command.ts';

/**
Says what went wrong and gives the exit code.
Trouble is told in its own sentences; anything else is a fault of the program, told in one line, with the stack only
for those who ask for it by ROOMTARE_DEBUG.

@param outJson - Takes the same as JSON, where a script asked for it: standard output is never empty then.
*/
export function sayFailure(
	error: unknown,
	say: (text: string) => void,
	wantsStack: boolean,
	outJson?: (text: string) => void,
): ExitCode {
	const isTrouble = error instanceof Trouble;
	const problems = isTrouble ? error.problems : [faultText(error)];
	outJson?.(JSON.stringify({error: isTrouble ? 'trouble' : 'fault', problems}, undefined, '\t'));
	for (const problem of problems) say(problem);
	if (!isTrouble && wantsStack && error instanceof Error && error.stack) say(error.stack);
	return exitCode.trouble;
}

function faultText(error: unknown): string {
	const what = error instanceof Error ? `${error.name}: ${error.message}` : String(error);
	return `A fault in roomtare, not in your files (${what}). Nothing was changed. Please report it with the command that you gave; ROOMTARE_DEBUG=1 shows more.`;
}
