import WholeOutput from 'quick-whole:output';
import {bareText, plain} from './plain.js';

/**
One frame, put together from texts at their places. Frames of plain texts that stand side by side, which is nearly all,
are joined line by line; Ink takes every one apart into cells, which costs most of the time from a key to its frame.
All others are left to Ink's own class.
*/
export default class Output {
	operations = [];

	constructor({width, height}) {
		this.width = width;
		this.height = height;
	}

	write(x, y, text, options) {
		if (text) this.operations.push(['write', x, y, text, options]);
	}

	clip(clip) {
		this.operations.push(['clip', clip]);
	}

	unclip() {
		this.operations.push(['unclip']);
	}

	get() {
		return joined(this) ?? whole(this);
	}
}

function whole({width, height, operations}) {
	const output = new WholeOutput({width, height});
	for (const [kind, ...args] of operations) output[kind](...args);
	return output.get();
}

/** Undefined where a text is clipped, not plain, beyond the edge, or over another. */
function joined({width, height, operations}) {
	const rows = Array.from({length: height}, () => []);
	for (const [kind, x, y, text, options] of operations) {
		if (kind !== 'write' || !Number.isInteger(x) || !Number.isInteger(y) || x < 0) return undefined;
		for (const [index, raw] of text.split('\n').entries()) {
			const row = rows[y + index];
			if (!row) continue;
			let line = raw;
			for (const transform of options.transformers) line = transform(line, index);
			const bare = bareText(line);
			if (!plain.test(bare) || x + bare.length > width) return undefined;
			if (bare !== '') row.push({x, line, end: x + bare.length});
		}
	}

	const lines = [];
	for (const row of rows) {
		row.sort((a, b) => a.x - b.x);
		let line = '';
		let at = 0;
		for (const piece of row) {
			if (piece.x < at) return undefined;
			line += ' '.repeat(piece.x - at) + piece.line;
			at = piece.end;
		}

		lines.push(line.trimEnd());
	}

	return {output: lines.join('\n'), height};
}
