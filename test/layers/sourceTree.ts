import {readdirSync, readFileSync} from 'node:fs';
import {dirname, join, relative, resolve} from 'node:path';

const sourceFolder = resolve(import.meta.dirname, '../../source');

/** An import of one source file: `how` is "lazy" where it is loaded by `await import(…)`. */
export type Import = {
	readonly from: string;
	readonly target: string;
	readonly how: 'value' | 'type' | 'lazy';
};

/** Every TypeScript file of the program, relative to `source/`, with forward slashes. */
export const sourceFiles: readonly string[] = (
	readdirSync(sourceFolder, {recursive: true, encoding: 'utf8'}) as string[]
)
	.filter(name => /\.tsx?$/.test(name))
	.map(name => name.replaceAll('\\', '/'))
	.sort();

const texts = new Map(sourceFiles.map(file => [file, readFileSync(join(sourceFolder, file), 'utf8')]));

/** A file's text without its comments. */
export function codeOf(file: string): string {
	return texts
		.get(file)!
		.replace(/\/\*[\s\S]*?\*\//g, '')
		.replace(/(^|\s)\/\/.*$/gm, '$1');
}

/** A file's code with the contents of its string literals removed too, so that prose is not taken for code. */
export function bareCodeOf(file: string): string {
	return codeOf(file).replace(/'(?:[^'\\\n]|\\.)*'|"(?:[^"\\\n]|\\.)*"/g, "''");
}

function importsOf(file: string): Import[] {
	const text = codeOf(file);
	const found: Import[] = [];
	const add = (specifier: string, how: Import['how']) => {
		const target = specifier.startsWith('.')
			? relative(sourceFolder, resolve(sourceFolder, dirname(file), specifier)).replaceAll('\\', '/')
			: specifier;
		found.push({from: file, target, how});
	};

	for (const match of text.matchAll(/^\s*(?:import|export)\s+(type\s)?([^;'"]*?)from\s+['"]([^'"]+)['"]/gm)) {
		// `import {type A, type B}` takes types alone too.
		const names = /^\{([^}]*)\}\s*$/
			.exec(match[2]!)?.[1]
			?.split(',')
			.map(name => name.trim())
			.filter(Boolean);
		const typesAlone = Boolean(match[1]) || names?.every(name => name.startsWith('type ')) === true;
		add(match[3]!, typesAlone ? 'type' : 'value');
	}

	for (const match of text.matchAll(/^\s*import\s+['"]([^'"]+)['"]/gm)) add(match[1]!, 'value');
	for (const match of text.matchAll(/\bimport\(\s*['"]([^'"]+)['"]\s*\)/g)) add(match[1]!, 'lazy');
	return found;
}

/** Every import in `source/`, types included. */
export const allImports: readonly Import[] = sourceFiles.flatMap(file => importsOf(file));

export const isLocal = (target: string): boolean => texts.has(target);

/** The room a file stands in: its storey and folder (`study/survey`), or the layer itself where it has no storeys. */
export function roomOf(file: string): string {
	const parts = file.split('/');
	const storeys = ['science', 'study', 'profile'];
	return storeys.includes(parts[0]!) && parts.length > 2 ? `${parts[0]}/${parts[1]}` : parts[0]!;
}
