import {cellWidth} from '../../report/fitCells.ts';

/** Keys and what they do on one line: wide apart where that fits, else close, and as many in their order as fit. */
export function footerText(
	keys: ReadonlyArray<readonly [key: string, does: string]>,
	columns: number,
): string {
	const words = keys.map(([key, does]) => `${key} ${does}`);
	const wide = ` ${words.join('   ')}`;
	if (cellWidth(wide) <= columns) return wide;
	let text = '';
	for (const word of words) {
		const next = `${text === '' ? ' ' : `${text}  `}${word}`;
		if (cellWidth(next) <= columns) text = next;
	}

	return text;
}
