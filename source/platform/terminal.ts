import fs from 'node:fs';
import {visibleText} from '../profile/visibleText.ts';

/** What the process offers a command: its streams and its clock. */
export type Terminal = {
	readonly out: (text: string) => void;
	readonly say: (text: string) => void;
	readonly isTerminal: boolean;
	readonly columns: number;
	readonly readStandardInput: () => Promise<Uint8Array>;
	readonly now: () => Date;
};

const usualColumns = 80;

/**
The streams of this process; all that goes to them is text that cannot steer a terminal. A reader that closes its end early (`| head`) ends the program quietly: the rest of the
output has no reader, and that is no fault.
*/
export function processTerminal(): Terminal {
	// Node opens each stream when it is first asked for, which takes its time: nothing here asks before it is needed.
	return {
		out: text => write(process.stdout, text),
		say: text => write(process.stderr, text),
		get isTerminal() {
			return process.stdout.isTTY === true && process.stdin.isTTY === true;
		},
		get columns() {
			return process.stdout.columns || Number(process.env.COLUMNS) || usualColumns;
		},
		readStandardInput,
		now: () => new Date(),
	};
}

const guarded = new Set<NodeJS.WriteStream>();

function write(stream: NodeJS.WriteStream, text: string): void {
	if (!guarded.has(stream)) {
		guarded.add(stream);
		stream.on('error', (error: NodeJS.ErrnoException) => {
			// Who reads no further wants no more.
			if (error.code === 'EPIPE') process.exit();
			sayLost(stream, error);
			process.exit(2);
		});
	}

	stream.write(endLine(visibleText(text)));
}

/** Tells that the output is not whole, where there is still anywhere to tell it. */
function sayLost(stream: NodeJS.WriteStream, error: NodeJS.ErrnoException): void {
	if (stream === process.stderr) return;
	try {
		const why = error.code === 'ENOSPC' ? 'the disk is full' : (error.code ?? error.message);
		fs.writeSync(2, `Standard output could not be written (${why}). What is there is not whole.\n`);
	} catch {}
}

function endLine(text: string): string {
	return text === '' || text.endsWith('\n') ? text : `${text}\n`;
}

async function readStandardInput(): Promise<Uint8Array> {
	const chunks: Uint8Array[] = [];
	for await (const chunk of process.stdin) chunks.push(chunk as Uint8Array);
	const whole = new Uint8Array(chunks.reduce((length, chunk) => length + chunk.length, 0));
	let at = 0;
	for (const chunk of chunks) {
		whole.set(chunk, at);
		at += chunk.length;
	}

	return whole;
}
