import {EventEmitter} from 'node:events';
import {render} from 'ink';
import type {ReactElement} from 'react';

class Output extends EventEmitter {
	columns: number;
	last = '';
	constructor(columns: number) {
		super();
		this.columns = columns;
	}

	write = (frame: string) => {
		if (frame.trim()) this.last = frame;
		return true;
	};
}

/** What a screen reader is given for one drawing, without escape codes. */
export function readAloud(node: ReactElement, columns = 80): string {
	const output = new Output(columns);
	const app = render(node, {
		stdout: output as unknown as NodeJS.WriteStream,
		isScreenReaderEnabled: true,
		debug: true,
		exitOnCtrlC: false,
		patchConsole: false,
	});
	app.unmount();
	return output.last;
}
