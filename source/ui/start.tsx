import type {Files} from './files.ts';
import type {Recordings} from './recordings.ts';
import type {Searches} from './searches.ts';

export type Start = {
	readonly files: Files;
	/** Absent where no recording can be reached. */
	readonly recordings?: Recordings;
	/** Absent where there are no other threads. */
	readonly searches?: Searches;
	/** Opens the walk of this profile at once; without it the home screen is shown. */
	readonly file?: string;
	readonly now: () => Date;
	/** Streams of the terminal; those of the process where not given. */
	readonly stdin?: NodeJS.ReadStream;
	readonly stdout?: NodeJS.WriteStream;
};

const signals = ['SIGTERM', 'SIGHUP', 'SIGINT'] as const;

/**
Opens the interface and waits until it is left. Both streams must be terminals.
Everything that was answered is on disk when it returns, whichever way it was left.

@returns The exit code: 0, or 130 where it was interrupted; and what is to be told then, where answers had to go elsewhere.

@throws {Error} If `file` cannot be read, with what the reader of files said.
*/
export async function openApp({
	files,
	recordings,
	searches,
	file,
	now,
	stdin = process.stdin,
	stdout = process.stdout,
}: Start): Promise<{readonly code: 0 | 130; readonly said: readonly string[]}> {
	// The library of colours knows FORCE_COLOR only; it looks once, when it is loaded.
	if (process.env.NO_COLOR) process.env.FORCE_COLOR = '0';
	const [{render}, {App}, {startSession}] = await Promise.all([
		import('ink'),
		import('./app.tsx'),
		import('./session.ts'),
	]);
	const session = startSession(
		{files, now, ...(recordings && {recordings}), ...(searches && {searches})},
		file,
	);
	const instance = render(<App session={session} />, {
		stdin,
		stdout,
		exitOnCtrlC: false,
		patchConsole: false,
		maxFps: 120,
	});
	const onSignal = () => session.interrupt();
	for (const signal of signals) process.on(signal, onSignal);
	// A terminal that was closed takes and gives nothing any more. Kept to the end: leaving still draws.
	const onGone = () => {
		if (session.screen().kind !== 'left') session.interrupt();
	};
	for (const stream of [stdin, stdout]) stream.on('error', onGone);
	try {
		await instance.waitUntilExit();
	} finally {
		for (const signal of signals) process.off(signal, onSignal);
		// Left by itself, such as by a fault of the drawing: nothing may be lost by that.
		onGone();
	}

	return {code: session.wasInterrupted() ? 130 : 0, said: session.said()};
}
