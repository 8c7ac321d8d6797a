import {cellWidth} from '../../report/fitCells.ts';

/** Keys and what they do on one line: as many, in their order, as fit. */
export function footerText(
	keys: ReadonlyArray<readonly [key: string, does: string]>,
	columns: number,
): string {
	let text = '';
	for (const [key, does] of keys) {
		const next = `${text}${text === '' ? ' ' : '   '}${key} ${does}`;
		if (cellWidth(next) > columns) continue;
		text = next;
	}

	return text;
}
