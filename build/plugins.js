import {readFile} from 'node:fs/promises';
import {isBuiltin} from 'node:module';
import {join, relative} from 'node:path';
import {replaceKnown} from './mustApply.js';
import {generatedSchemaFile, generatedSchemaModule} from './profileSchema.js';

/**
Ink loads its developer tools, and with them a client for web sockets, where the environment says DEV=true; a published
program has no use for them, and must start there too.
*/
export const noDeveloperTools = {
	name: 'no-developer-tools',
	setup({onLoad}) {
		onLoad({filter: /[/\\]node_modules[/\\]ink[/\\]build[/\\]devtools\.js$/}, () => ({contents: ''}));
		onLoad({filter: /[/\\]node_modules[/\\]ink[/\\]build[/\\]utils\.js$/}, async ({path}) => {
			const text = await readFile(path, 'utf8');
			return {contents: replaceKnown(text, "process.env['DEV'] === 'true'", 'false', path)};
		});
	},
};

/**
Where the environment says CI=true Ink draws nothing until the end. Whoever opens the app sits at a terminal, or it
would not have been opened: it draws always.
*/
export const alwaysDraws = {
	name: 'always-draws',
	setup({onLoad}) {
		onLoad({filter: /[/\\]node_modules[/\\]is-in-ci[/\\]index\.js$/}, () => ({
			contents: 'export default false;',
		}));
	},
};

/**
Where neither output is a terminal Ink's package for its size starts other programs to ask them. The app opens at a
terminal only, and a terminal that does not know its size yet is taken for one of 80 by 24: no program is started.
*/
export const startsNoProgram = {
	name: 'starts-no-program',
	setup({onLoad}) {
		onLoad({filter: /[/\\]node_modules[/\\]terminal-size[/\\]index\.js$/}, () => ({
			contents: `const known = side => process.stdout[side] || process.stderr[side];
export default () => ({columns: known('columns') || 80, rows: known('rows') || 24});`,
		}));
	},
};

/**
The cursor is shown again when the app is left. A package does so at the exit on standard error, also where that is a file
or a pipe, which then holds an escape sequence: there it stays away.
*/
export const quietCursor = {
	name: 'quiet-cursor',
	setup({onLoad}) {
		onLoad({filter: /[/\\]node_modules[/\\]restore-cursor[/\\]index\.js$/}, async ({path}) => {
			const text = await readFile(path, 'utf8');
			const written = 'process.stderr.write(';
			return {contents: replaceKnown(text, written, `if (process.stderr.isTTY) ${written}`, path)};
		});
	},
};

/**
Node's own modules do nothing when loaded: an import of which nothing is used can go. `node:process` is the global
`process`; to import it would make Node open all three standard streams, for ten milliseconds.
*/
export const quietBuiltins = {
	name: 'quiet-builtins',
	setup({onResolve, onLoad}) {
		onResolve({filter: /./}, ({path, kind}) => {
			if (kind !== 'import-statement' || !isBuiltin(path)) return undefined;
			return /^(node:)?process$/.test(path)
				? {path, namespace: 'process', sideEffects: false}
				: {path, external: true, sideEffects: false};
		});
		onLoad({filter: /./, namespace: 'process'}, () => ({contents: 'module.exports = process;'}));
	},
};

/**
The first segmenter that is made loads tables of Unicode for 20 to 30 ms, and so does a pattern of all emoji for 40 ms.
Packages make theirs when they are loaded, but plain texts never need one: it is made at the first use. A pattern is
written as a string then, because V8 reads the literals of a function twice.
*/
export const lateSegmenters = {
	name: 'late-segmenters',
	setup({onLoad}) {
		onLoad({filter: /[/\\]node_modules[/\\].*\.m?js$/}, async ({path}) => {
			const text = await readFile(path, 'utf8');
			const made = /^const (\w+) = new Intl\.Segmenter\(([^)]*)\);/gm;
			const late =
				'const $1 = {segment(text) {return (this.made ??= new Intl.Segmenter($2)).segment(text);}};';
			if (!made.test(text)) return undefined;
			return {contents: text.replaceAll(made, late).replaceAll(ofSets, latePattern)};
		});
	},
};

/** A pattern of sets of characters and strings, which are looked up when it is made. */
const ofSets = /^const (\w+) = \/(.*)\/v;$/gm;

/** What stands for a pattern until it is first asked: for `test`, and as what a text is searched for. */
function latePattern(_, name, pattern) {
	const made = `(this.made ??= new RegExp(${JSON.stringify(pattern)}, 'v'))`;
	return `const ${name} = {test(text) {return ${made}.test(text);}, [Symbol.search](text) {return text.search${made};}};`;
}

/**
Leaves out what is only loaded by `await import(…)` from a folder, and tells which files those are: they become
bundles of their own.

@param folder - Absolute path.
@param found - Set that receives the files, relative to the folder.
@param outputOf - Path of a file's bundle as the importing bundle reaches it.
*/
export const separate = (folder, found, outputOf) => ({
	name: 'separate',
	setup({onResolve, resolve}) {
		onResolve({filter: /^\./}, async ({path, kind, resolveDir, pluginData}) => {
			if (kind !== 'dynamic-import' || pluginData === 'asked') return undefined;
			const {path: file} = await resolve(path, {kind, resolveDir, pluginData: 'asked'});
			if (!file.startsWith(join(folder, '/'))) return undefined;
			const inner = relative(folder, file);
			found.add(inner);
			return {path: outputOf(inner), external: true};
		});
	},
});

/** Writes the order of the keys in a file into the program: who saves needs no schema library. */
export const knownKeyOrder = order => ({
	name: 'known-key-order',
	setup({onLoad}) {
		onLoad({filter: /[/\\]source[/\\]profile[/\\]file[/\\]keyOrder\.ts$/}, () => ({
			contents: `export const keyOrder = ${JSON.stringify(order)};`,
			loader: 'ts',
		}));
	},
});

/**
Writes the generated JSON Schema into the program, and loads the whole schema, and with it the schema library, only at
the first call.

@param load - The expression that gives the module of the whole schema.
*/
export const lateSchema = (generated, load = "require('../schema/profile.ts')") => ({
	name: 'late-schema',
	setup({onLoad}) {
		onLoad({filter: generatedSchemaFile}, () => ({contents: generatedSchemaModule(generated), loader: 'ts'}));
		onLoad({filter: /[/\\]source[/\\]profile[/\\]file[/\\]wholeSchema\.ts$/}, () => ({
			contents: `export const wholeSchema = () => ${load}.profileSchema;`,
			loader: 'ts',
		}));
	},
});
