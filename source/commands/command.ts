/** Exit codes of every command. */
export const exitCode = {
	/** Done, and the answer is yes. */
	fine: 0,
	/** Valid input, but the answer is no; the data are printed all the same. */
	no: 1,
	/** The input could not be read, or the call was wrong. */
	trouble: 2,
	interrupted: 130,
} as const;

export type ExitCode = (typeof exitCode)[keyof typeof exitCode];

/** What a command sees of the world. Data go to `out`, words for people to `say` (standard error). */
export type CommandContext = {
	/** Positional arguments after the command's name. */
	readonly input: readonly string[];
	readonly flags: Readonly<Record<string, unknown>>;
	readonly out: (text: string) => void;
	readonly say: (text: string) => void;
	/** Whether standard output is a terminal; where not, nothing is drawn and nothing coloured. */
	readonly isTerminal: boolean;
	/** Width of the terminal in cells; 80 where unknown. */
	readonly columns: number;
	readonly readStandardInput: () => Promise<Uint8Array>;
	readonly now: () => Date;
};

/** One flag, in the form that the argument parser takes. */
export type Flag = {
	readonly type: 'string' | 'boolean' | 'number';
	readonly shortFlag?: string;
	readonly isMultiple?: boolean;
	readonly default?: string | boolean | number;
	readonly choices?: readonly string[];
	/** Whether values beside the choices are possible; the command itself says which. */
	readonly takesOthers?: boolean;
	/** Help text, one line. */
	readonly help: string;
	/** Name of the value in the help, such as DIR. */
	readonly value?: string;
};

/**
A command: words for the help, flags, and what it does. One file each in `commands/`, which exports it as `command`
and is named in `registry.ts`. Trouble that the user can mend is thrown as `Trouble`; the entry says it and ends with 2.
The number of arguments is checked against `takes` and the flags against `flags` before `run`; the flags `json`,
`profiles` and `length` come to every command.
*/
export type Command = {
	readonly name: string;
	/** One line, for the list of commands. */
	readonly summary: string;
	/** The arguments, such as `PROFILE` or `OLD NEW`. */
	readonly takes: string;
	readonly flags?: Readonly<Record<string, Flag>>;
	/** Each a whole command line with a few words on what it does. */
	readonly examples: ReadonlyArray<readonly [call: string, does: string]>;
	readonly run: (context: CommandContext) => Promise<ExitCode>;
};
