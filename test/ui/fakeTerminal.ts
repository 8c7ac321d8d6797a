import {EventEmitter} from 'node:events';
import {PassThrough} from 'node:stream';
import {render} from 'ink';
import type {ReactElement} from 'react';
import {onTestFinished} from 'vitest';

class Screen extends EventEmitter {
	readonly isTTY = true;
	columns: number;
	rows: number;
	frame = '';
	constructor(columns: number, rows: number) {
		super();
		this.columns = columns;
		this.rows = rows;
	}

	write = (text: string) => {
		this.frame = text;
		return true;
	};
}

class Keys extends PassThrough {
	readonly isTTY = true;
	setRawMode() {
		return this;
	}

	ref() {
		return this;
	}

	unref() {
		return this;
	}
}

/** Draws an element in a terminal of any size that can be resized, and sends it keys. Frames are plain text. */
export function drawIn(columns: number, rows: number, node: ReactElement, isScreenReaderEnabled = false) {
	const screen = new Screen(columns, rows);
	const keys = new Keys();
	const app = render(node, {
		stdout: screen as unknown as NodeJS.WriteStream,
		stdin: keys as unknown as NodeJS.ReadStream,
		debug: true,
		isScreenReaderEnabled,
		exitOnCtrlC: false,
		patchConsole: false,
	});
	onTestFinished(() => app.unmount());
	return {
		frame: () => screen.frame,
		lines: () => screen.frame.split('\n'),
		press: (text: string) => keys.write(text),
		resize(newColumns: number, newRows: number) {
			screen.columns = newColumns;
			screen.rows = newRows;
			screen.emit('resize');
		},
		ended: app.waitUntilExit(),
	};
}
