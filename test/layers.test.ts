import {readdirSync, readFileSync} from 'node:fs';
import {dirname, join, relative, resolve} from 'node:path';
import {expect, test} from 'vitest';

const sourceFolder = resolve(import.meta.dirname, '../source');

type Allowed = {
	/** Layers that may be imported with values and types. */
	readonly values: readonly string[];
	/** Layers of which only types may be imported. */
	readonly types?: readonly string[];
	/** Layers that may be imported only by `await import(…)`. */
	readonly lazily?: readonly string[];
	readonly packages: readonly RegExp[];
};

// The words that profile files use (channel names, units as people write them) are plain tables and functions
// without the schema library; the layers that speak to people may use them.
const words = /^profile\/((channels|names)\.ts|units\/)/;
const usersOfWords = ['profile', 'placement', 'calibration', 'report', 'ui', 'commands'];

const layers: Readonly<Record<string, Allowed>> = {
	numeric: {values: ['numeric'], packages: [/^ml-/]},
	signal: {values: ['signal', 'numeric'], packages: [/^fft\.js$/]},
	acoustics: {values: ['acoustics', 'signal', 'numeric'], packages: []},
	profile: {values: ['profile'], packages: [/^zod$/]},
	placement: {
		values: ['numeric', 'signal', 'acoustics', 'placement', 'calibration'],
		types: ['profile'],
		packages: [],
	},
	calibration: {
		values: ['numeric', 'signal', 'acoustics', 'placement', 'calibration'],
		types: ['profile'],
		packages: [],
	},
	report: {
		values: ['report'],
		types: ['acoustics', 'placement', 'calibration', 'profile'],
		packages: [/^d3-/, /^string-width$/],
	},
	platform: {values: ['platform', 'profile'], packages: [/^node:/, /^env-paths$/]},
	ui: {
		values: ['ui', 'placement', 'calibration', 'profile', 'report'],
		packages: [/^ink$/, /^react(\/|$)/, /^ink-table$/],
	},
	commands: {
		values: ['commands', 'signal', 'acoustics', 'placement', 'calibration', 'profile', 'report', 'platform'],
		lazily: ['ui'],
		packages: [],
	},
	'cli.ts': {values: ['commands', 'platform'], lazily: ['commands'], packages: [/^meow$/]},
};

type Import = {readonly from: string; readonly target: string; readonly how: 'value' | 'type' | 'lazy'};

const sourceFiles = (readdirSync(sourceFolder, {recursive: true, encoding: 'utf8'}) as string[])
	.filter(name => /\.tsx?$/.test(name))
	.map(name => name.replaceAll('\\', '/'));

function withoutComments(text: string): string {
	return text.replace(/\/\*[\s\S]*?\*\//g, '').replace(/(^|\s)\/\/.*$/gm, '$1');
}

function importsOf(file: string): Import[] {
	const text = withoutComments(readFileSync(join(sourceFolder, file), 'utf8'));
	const found: Import[] = [];
	const add = (specifier: string, how: Import['how']) => {
		const target = specifier.startsWith('.')
			? relative(sourceFolder, resolve(sourceFolder, dirname(file), specifier)).replaceAll('\\', '/')
			: specifier;
		found.push({from: file, target, how});
	};

	for (const match of text.matchAll(/^\s*(?:import|export)\s+(type\s)?[^;'"]*?from\s+['"]([^'"]+)['"]/gm)) {
		add(match[2]!, match[1] ? 'type' : 'value');
	}

	for (const match of text.matchAll(/^\s*import\s+['"]([^'"]+)['"]/gm)) add(match[1]!, 'value');
	for (const match of text.matchAll(/\bimport\(\s*['"]([^'"]+)['"]\s*\)/g)) add(match[1]!, 'lazy');
	return found;
}

const allImports = sourceFiles.flatMap(file => importsOf(file));
const isLocal = (target: string) => sourceFiles.includes(target);
const layerOf = (file: string) => file.split('/')[0]!;

test('the source folder holds files of every layer', () => {
	expect(new Set(sourceFiles.map(file => layerOf(file)))).toContain('profile');
	expect(allImports.length).toBeGreaterThan(20);
});

test('every import goes where its layer may go', () => {
	const breaches: string[] = [];
	for (const {from, target, how} of allImports) {
		const allowed = layers[layerOf(from)];
		if (!allowed) {
			breaches.push(`${from}: not in a known layer`);
			continue;
		}

		if (!isLocal(target)) {
			if (target.startsWith('../') || /\.tsx?$/.test(target))
				breaches.push(`${from} imports ${target}, which is not in source`);
			else if (how !== 'type' && !allowed.packages.some(pattern => pattern.test(target))) {
				breaches.push(`${from} imports the package ${target}`);
			}

			continue;
		}

		const layer = layerOf(target);
		const isFine =
			allowed.values.includes(layer) ||
			(how === 'type' && (allowed.types ?? []).includes(layer)) ||
			(how === 'lazy' && (allowed.lazily ?? []).includes(layer)) ||
			(how === 'type' && (allowed.lazily ?? []).includes(layer)) ||
			(words.test(target) && usersOfWords.includes(layerOf(from)));
		if (!isFine) breaches.push(`${from} imports ${target} (${how})`);
	}

	expect(breaches).toEqual([]);
});

test('the words of the profile use no schema library', () => {
	const beyond = allImports.filter(
		({from, target, how}) => how !== 'type' && words.test(from) && !words.test(target),
	);
	expect(beyond).toEqual([]);
});

test('no import runs in a circle', () => {
	const edges = new Map<string, string[]>();
	for (const {from, target, how} of allImports) {
		if (how !== 'type' && isLocal(target)) edges.set(from, [...(edges.get(from) ?? []), target]);
	}

	const done = new Set<string>();
	const circles: string[] = [];
	const visit = (file: string, path: readonly string[]) => {
		if (path.includes(file)) {
			circles.push([...path.slice(path.indexOf(file)), file].join(' → '));
			return;
		}

		if (done.has(file)) return;
		for (const next of edges.get(file) ?? []) visit(next, [...path, file]);
		done.add(file);
	};

	for (const file of edges.keys()) visit(file, []);
	expect(circles).toEqual([]);
});

test('clock, randomness, environment and console stay at the edge', () => {
	const forbidden =
		/\b(Date\.now|new Date\(\s*\)|Math\.random|performance\.now|process\.|console\.|globalThis\.crypto|setTimeout|setInterval)/;
	const breaches = sourceFiles
		.filter(file => !/^(commands|ui|platform|cli\.ts)/.test(file))
		.filter(file => forbidden.test(withoutComments(readFileSync(join(sourceFolder, file), 'utf8'))));
	expect(breaches).toEqual([]);
});
