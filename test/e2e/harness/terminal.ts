/**
Runs the built program in a pseudo-terminal and shows what a person would see.

	const terminal = openTerminal(['walk', file], {columns: 80, rows: 24});
	await terminal.waitFor('Front left');      // text or pattern on the visible screen, with a deadline
	terminal.type('2.86');
	terminal.press('enter');
	await terminal.waitFor(/2\.86 m/);
	terminal.resize(60, 20);
	terminal.kill('SIGKILL');
	const {code} = await terminal.ended;

Nothing sleeps: `waitFor` looks again whenever the program has drawn something. When the deadline passes, the error
shows the screen. Keys typed one after the other without a wait reach the program together, as from a fast hand; wait
for the effect of each where the next one depends on it. Terminals still open at the end of a test are killed.
*/
import {type IPty, spawn} from '@lydell/node-pty';
import xterm from '@xterm/headless';
import {onTestFinished} from 'vitest';
import {builtProgram, cleanEnvironment, temporaryFolder} from './program.ts';

const keys = {
	enter: '\r',
	escape: '\u001b',
	tab: '\t',
	shiftTab: '\u001b[Z',
	up: '\u001b[A',
	down: '\u001b[B',
	right: '\u001b[C',
	left: '\u001b[D',
	pageUp: '\u001b[5~',
	pageDown: '\u001b[6~',
	home: '\u001b[H',
	end: '\u001b[F',
	backspace: '\u007f',
	delete: '\u001b[3~',
	interrupt: '\u0003',
} as const;

export type TerminalOptions = {
	readonly columns?: number;
	readonly rows?: number;
	/** Working folder, and home of the program; a new empty one where not given. */
	readonly folder?: string;
	readonly env?: Readonly<Record<string, string>>;
	readonly program?: string;
};

export type Ended = {readonly code: number; readonly signal: number | undefined};

export type OpenTerminal = {
	/** The visible lines without trailing blanks. */
	readonly lines: () => string[];
	readonly screen: () => string;
	/** Everything the program wrote, escape sequences and all. */
	readonly written: () => string;
	readonly type: (text: string) => void;
	readonly press: (...names: ReadonlyArray<keyof typeof keys>) => void;
	/** Resolves with the screen once it shows the text or matches the pattern. */
	readonly waitFor: (sought: string | RegExp, deadlineMs?: number) => Promise<string>;
	/** Resolves with the screen once the condition holds for it; `what` names it in the error. */
	readonly waitUntil: (
		condition: (screen: string) => boolean,
		what: string,
		deadlineMs?: number,
	) => Promise<string>;
	readonly resize: (columns: number, rows: number) => void;
	readonly kill: (signal?: NodeJS.Signals) => void;
	/** Takes the terminal away, as closing its window does. */
	readonly close: () => void;
	readonly ended: Promise<Ended>;
	readonly processId: number;
};

/** Starts the program in a terminal of the given size, 80 × 24 where not given. */
export function openTerminal(args: readonly string[], options: TerminalOptions = {}): OpenTerminal {
	const {columns = 80, rows = 24, folder = temporaryFolder(), env, program = builtProgram} = options;
	const screen = new xterm.Terminal({cols: columns, rows, allowProposedApi: true, scrollback: 1000});
	const child: IPty = spawn(process.execPath, [program, ...args], {
		name: 'xterm-256color',
		cols: columns,
		rows,
		cwd: folder,
		env: cleanEnvironment(folder, {TERM: 'xterm-256color', ...env}),
	});
	const watchers = new Set<() => void>();
	const chunks: string[] = [];
	let over: Ended | undefined;
	const notify = () => {
		for (const watcher of watchers) watcher();
	};

	child.onData(chunk => {
		chunks.push(chunk);
		screen.write(chunk, notify);
	});
	// The terminal answers questions of the program, such as where the cursor stands.
	screen.onData(answer => child.write(answer));
	const ended = new Promise<Ended>(done => {
		child.onExit(({exitCode, signal}) => {
			over = {code: exitCode, signal: signal || undefined};
			screen.write('', notify);
			done(over);
		});
	});
	const kill = (signal: NodeJS.Signals = 'SIGKILL') => {
		if (!over) child.kill(signal);
	};

	onTestFinished(() => kill());

	const lines = () => {
		const {active} = screen.buffer;
		return Array.from(
			{length: screen.rows},
			(_, row) => active.getLine(active.baseY + row)?.translateToString(true) ?? '',
		);
	};

	const visible = () => lines().join('\n').trimEnd();
	const waitUntil: OpenTerminal['waitUntil'] = (condition, what, deadlineMs = 20_000) =>
		new Promise((done, fail) => {
			const finish = (settle: () => void) => {
				clearTimeout(timer);
				watchers.delete(look);
				settle();
			};

			const giveUp = (why: string) =>
				finish(() => fail(new Error(`${why} before the screen showed ${what}. It shows:\n${visible()}`)));
			const timer = setTimeout(() => giveUp(`${deadlineMs} ms passed`), deadlineMs);
			const look = () => {
				const shown = visible();
				if (condition(shown)) finish(() => done(shown));
				else if (over) giveUp(`The program ended with code ${over.code}`);
			};

			watchers.add(look);
			look();
		});

	return {
		lines,
		screen: visible,
		written: () => chunks.join(''),
		type: text => child.write(text),
		press: (...names) => {
			for (const name of names) child.write(keys[name]);
		},
		waitFor: (sought, deadlineMs) =>
			waitUntil(
				shown => (typeof sought === 'string' ? shown.includes(sought) : sought.test(shown)),
				typeof sought === 'string' ? `“${sought}”` : String(sought),
				deadlineMs,
			),
		waitUntil,
		resize: (newColumns, newRows) => {
			screen.resize(newColumns, newRows);
			child.resize(newColumns, newRows);
		},
		kill,
		// The library's types leave it out.
		close: () => (child as IPty & {destroy: () => void}).destroy(),
		ended,
		processId: child.pid,
	};
}
