import {cellWidth} from '../../report/fitCells.ts';

/** The key that tells all others; it is never left out for them. */
const help = '?';

/** Keys and what they do on one line: wide apart where that fits, else close, as many in their order as fit, and help. */
export function footerText(
	keys: ReadonlyArray<readonly [key: string, does: string]>,
	columns: number,
): string {
	const words = keys.map(([key, does]) => `${key} ${does}`);
	const wide = ` ${words.join('   ')}`;
	if (cellWidth(wide) <= columns) return wide;
	const helpAt = keys.findIndex(([key]) => key === help);
	let left = helpAt < 0 ? 0 : cellWidth(words[helpAt]!) + 2;
	let text = '';
	for (const [index, word] of words.entries()) {
		if (index === helpAt) left = 0;
		const next = `${text === '' ? ' ' : `${text}  `}${word}`;
		if (cellWidth(next) + left <= columns) text = next;
	}

	return text;
}
