import {readFileSync, writeFileSync} from 'node:fs';
import {expect} from 'vitest';

type Guard = 'imports' | 'fileCircles' | 'folderCircles' | 'names' | 'memories';

/**
Breaches of one guard, held against the list of those that are known in `known/`. The list may only shrink: a new breach
fails, and so does an entry whose breach is gone, until it is struck off (`STRIKE_OFF=1 npx vitest run test/layers` does).
*/
export function expectOnlyKnown(guard: Guard, found: Iterable<string>): void {
	const path = new URL(`known/${guard}.json`, import.meta.url);
	const now = [...new Set(found)].sort();
	let known = JSON.parse(readFileSync(path, 'utf8')) as readonly string[];
	if (process.env.STRIKE_OFF) {
		known = known.filter(breach => now.includes(breach));
		writeFileSync(path, `${JSON.stringify(known, null, '\t')}\n`);
	}

	expect(
		now.filter(breach => !known.includes(breach)),
		`new breaches of "${guard}"`,
	).toEqual([]);
	expect(
		known.filter(breach => !now.includes(breach)),
		`mended: strike these off test/layers/known/${guard}.json`,
	).toEqual([]);
}
