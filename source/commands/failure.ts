import {Trouble} from '../platform/trouble.ts';
import {type ExitCode, exitCode} from './command.ts';

/**
Says what went wrong and gives the exit code.
Trouble is told in its own sentences; anything else is a fault of the program, told in one line, with the stack only
for those who ask for it by ROOMTARE_DEBUG.
*/
export function sayFailure(error: unknown, say: (text: string) => void, wantsStack: boolean): ExitCode {
	if (error instanceof Trouble) {
		for (const problem of error.problems) say(problem);
		return exitCode.trouble;
	}

	const what = error instanceof Error ? `${error.name}: ${error.message}` : String(error);
	say(
		`A fault in roomtare, not in your files (${what}). Nothing was changed. Please report it with the command that you gave; ROOMTARE_DEBUG=1 shows more.`,
	);
	if (wantsStack && error instanceof Error && error.stack) say(error.stack);
	return exitCode.trouble;
}
