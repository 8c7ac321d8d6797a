import {expect, test} from 'vitest';
import {allImports, bareCodeOf, codeOf, sourceFiles} from './sourceTree.ts';

const isEdge = (file: string) => /^(commands\/|ui\/|platform\/|cli\.ts|work\.ts)/.test(file);

test('clock, randomness, environment and console stay at the edge', () => {
	const forbidden =
		/\b(Date\.now|new Date\(\s*\)|Math\.random|performance\.now|process\.|console\.|globalThis\.crypto|setTimeout|setInterval)/;
	expect(sourceFiles.filter(file => !isEdge(file)).filter(file => forbidden.test(codeOf(file)))).toEqual([]);
});

test('the tape network is adjusted by commands, the memory of the screens and the worker alone', () => {
	const may = ['ui/walk/sceneOf.ts', 'work.ts'];
	const others = allImports.filter(
		({from, target, how}) =>
			target === 'study/survey/adjust.ts' &&
			how !== 'type' &&
			!from.startsWith('commands/') &&
			!may.includes(from),
	);
	expect(others).toEqual([]);
	expect(allImports.filter(({target}) => target === 'study/survey/adjust.ts').length).toBeGreaterThan(5);
});

/** Names that a file defines at its top level, with those it exports. Re-exports define nothing. */
function definedIn(file: string): {exported: string[]; own: string[]} {
	const exported: string[] = [];
	const own: string[] = [];
	const definition =
		/^(export\s+)?(?:default\s+)?(?:declare\s+)?(?:abstract\s+)?(?:async\s+)?(?:function\*?|const|let|class|type|interface|enum)\s+([A-Za-z_$][\w$]*)/gm;
	for (const match of bareCodeOf(file).matchAll(definition)) (match[1] ? exported : own).push(match[2]!);
	return {exported: [...new Set(exported)], own: [...new Set(own)]};
}

test('a name that a file exports is defined nowhere else', () => {
	const where = new Map<string, {exported: string[]; all: string[]}>();
	for (const file of sourceFiles) {
		const {exported, own} = definedIn(file);
		for (const name of new Set([...exported, ...own])) {
			const entry = where.get(name) ?? {exported: [], all: []};
			entry.all.push(file);
			if (exported.includes(name)) entry.exported.push(file);
			where.set(name, entry);
		}
	}

	const breaches: string[] = [];
	for (const [name, {exported, all}] of where) {
		// Every command exports its `command`: that is what makes it one.
		if (exported.length === 0 || all.length === 1 || name === 'command') continue;
		for (const file of all) breaches.push(`${name} in ${file}${exported.includes(file) ? '' : ' (private)'}`);
	}

	expect(breaches).toEqual([]);
});

/**
Files that may keep something between calls, each with its reason: constants made at first use, keyed by a size or rate
alone and bounded.
*/
const mayRemember: Readonly<Record<string, string>> = {
	'science/signal/fourier.ts': 'transform plans by length',
	'profile/file/soundness.ts': 'the test of the shipped schema',
	'report/fitCells.ts': 'the segmenter, whose tables most texts never need',
};

test('nothing below the screens and the platform remembers between calls', () => {
	const breaches: string[] = [];
	for (const file of sourceFiles) {
		if (isEdge(file) || mayRemember[file]) continue;
		const code = bareCodeOf(file);
		for (const match of code.matchAll(/^(?:export\s+)?let\s+([\w$]+)/gm))
			breaches.push(`${file}: let ${match[1]}`);
		for (const match of code.matchAll(/^(?:export\s+)?const\s+([\w$]+)[^=\n]*=\s*(new WeakMap)?/gm)) {
			const name = match[1]!.replaceAll('$', '\\$');
			const isWritten = new RegExp(
				`(?<![\\w$.])${name}(?:\\.(?:push|pop|shift|unshift|splice|set|add|delete|clear|fill|sort|reverse)\\(|(?:\\[[^\\]]+\\]|\\.[\\w$]+)+\\s*(?:[-+*/?&|]{0,2})=(?![=>]))`,
			).test(code);
			if (match[2] || isWritten) breaches.push(`${file}: ${match[1]}`);
		}
	}

	expect(breaches).toEqual([]);
});
