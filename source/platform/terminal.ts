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
The streams of this process. A reader that closes its end early (`| head`) ends the program quietly: the rest of the
output has no reader, and that is no fault.
*/
export function processTerminal(): Terminal {
	endQuietlyWithoutReader(process.stdout);
	endQuietlyWithoutReader(process.stderr);
	return {
		out: text => void process.stdout.write(endLine(text)),
		say: text => void process.stderr.write(endLine(text)),
		isTerminal: process.stdout.isTTY === true && process.stdin.isTTY === true,
		columns: process.stdout.columns || Number(process.env.COLUMNS) || usualColumns,
		readStandardInput,
		now: () => new Date(),
	};
}

function endQuietlyWithoutReader(stream: NodeJS.WriteStream): void {
	stream.on('error', (error: NodeJS.ErrnoException) => {
		if (error.code !== 'EPIPE') throw error;
		process.exit();
	});
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
