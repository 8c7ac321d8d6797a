// Bundles the program for publishing.
//
// Two bundles, because starting is most of the cost of a command: all that needs no drawing is CommonJS, which Node
// starts about 20 ms faster than ES modules, in chunks that are read when a command needs them. `ui/` holds Ink and
// what it draws, as ES modules, because Ink waits at the top level of its modules.
import {chmodSync, mkdirSync, readFileSync, rmSync, writeFileSync} from 'node:fs';
import {dirname, relative} from 'node:path';
import {fileURLToPath} from 'node:url';
import {build, transform} from 'esbuild';
import {fewDecoders} from './build/fewDecoders.js';
import {leanMeow} from './build/leanMeow.js';
import {mustApply, replaceKnown} from './build/mustApply.js';
import {thirdPartyNotices} from './build/notices.js';
import {
	alwaysDraws,
	knownKeyOrder,
	lateSchema,
	lateSegmenters,
	noDeveloperTools,
	quietBuiltins,
	quietCursor,
	separate,
	startsNoProgram,
} from './build/plugins.js';
import {keyOrderOf, profileSchemaOf} from './build/profileSchema.js';
import {quickFrames} from './build/quick/plugin.js';

const root = fileURLToPath(new URL('.', import.meta.url));
const {version} = JSON.parse(readFileSync(`${root}package.json`, 'utf8'));

const common = {
	absWorkingDir: root,
	bundle: true,
	platform: 'node',
	target: 'node20',
	minify: true,
	metafile: true,
	legalComments: 'none',
	logLevel: 'warning',
};
const profileSchema = await profileSchemaOf(root);
const keyOrder = await keyOrderOf(root);

const production = {
	// Without it React measures every render and keeps the measurements.
	'process.env.NODE_ENV': '"production"',
	ROOMTARE_VERSION: JSON.stringify(version),
	// Loaders of compiled code fetch it where they run in a browser. Here it is in the bundle, and nothing reaches the network.
	fetch: 'undefined',
};
const compiled = file => file.replace(/\.tsx?$/, '.js');

/**
A chunk of ES module as CommonJS. Imports of the drawing part stay: they load ES modules. The whole schema is a file of
its own, so that nothing of it is read before it is needed.

@param toRoot - Relative path from the chunk to `dist`, with its slash.
*/
async function commonJs(text, toRoot) {
	const importsUi = 'import("#ui/';
	const asksSchema = '__wholeSchema()';
	const drawing = text.includes(importsUi);
	const reading = text.includes(asksSchema);
	let {code} = await transform(text.replaceAll(importsUi, '__load("#ui/'), {
		format: 'cjs',
		platform: 'node',
		target: 'node20',
		minify: true,
		define: {'import.meta.url': '__moduleUrl'},
		banner: text.includes('import.meta.url')
			? "const __moduleUrl=require('node:url').pathToFileURL(__filename).href;"
			: '',
		supported: {'dynamic-import': false},
	});
	if (drawing) code = replaceKnown(code, '__load("#ui/', `import("${toRoot}ui/`, 'A chunk that draws');
	if (reading) code = replaceKnown(code, asksSchema, `require("${toRoot}schema.cjs")`, 'A chunk that reads');
	counts.drawing += Number(drawing);
	counts.reading += Number(reading);
	return code;
}

/** Chunks that load the drawing part, and those that load the whole schema: where there are none, a pattern has gone stale. */
const counts = {drawing: 0, reading: 0};

const drawn = new Set();
const program = await build({
	...common,
	entryPoints: ['source/cli.ts'],
	outdir: 'dist',
	outExtension: {'.js': '.cjs'},
	format: 'esm',
	splitting: true,
	chunkNames: 'chunks/[name]-[hash]',
	write: false,
	define: production,
	plugins: [
		separate(`${root}source/ui`, drawn, file => `#ui/${compiled(file)}`),
		leanMeow,
		fewDecoders,
		lateSchema(profileSchema, '__wholeSchema()'),
		knownKeyOrder(keyOrder),
		lateSegmenters,
		quietBuiltins,
	].map(mustApply),
});
const schema = await build({
	...common,
	entryPoints: ['source/profile/schema/profile.ts'],
	outfile: 'dist/schema.cjs',
	format: 'cjs',
	write: false,
});
// Long work on a thread of its own. It is one file, so that nothing that commands load is cut up for it.
const work = await build({
	...common,
	entryPoints: ['source/work.ts'],
	outfile: 'dist/work.cjs',
	format: 'cjs',
	write: false,
	define: {...production, 'import.meta.url': '__moduleUrl'},
	banner: {js: "const __moduleUrl=require('node:url').pathToFileURL(__filename).href;"},
	plugins: [fewDecoders].map(mustApply),
});
const ui = await build({
	...common,
	entryPoints: [...drawn].map(file => `source/ui/${file}`),
	outbase: 'source/ui',
	outdir: 'dist/ui',
	write: false,
	format: 'esm',
	splitting: true,
	chunkNames: 'chunks/[name]-[hash]',
	define: production,
	// CommonJS dependencies ask for `require`; ESM has none unless it is made.
	banner: {
		js: "import {createRequire as __createRequire} from 'node:module';const require=__createRequire(import.meta.url);",
	},
	plugins: [
		...[
			noDeveloperTools,
			alwaysDraws,
			startsNoProgram,
			quietCursor,
			quickFrames,
			lateSegmenters,
			quietBuiltins,
		].map(mustApply),
		// The app gets its profiles read; that the patterns still match shows in the build of the commands.
		lateSchema(profileSchema),
		knownKeyOrder(keyOrder),
	],
});
const chunks = [];
for (const {path, text} of program.outputFiles) {
	const toRoot = relative(dirname(path), `${root}dist`).replaceAll('\\', '/');
	chunks.push({path, contents: await commonJs(text, `${toRoot || '.'}/`)});
}

if (counts.drawing === 0 || counts.reading === 0)
	throw new Error('No chunk loads the drawing part or the whole schema; the build must be looked at again.');

// Only now, so that a build that fails leaves the last one.
rmSync(`${root}dist`, {recursive: true, force: true});
for (const {path, contents} of [...chunks, ...schema.outputFiles, ...work.outputFiles, ...ui.outputFiles]) {
	mkdirSync(dirname(path), {recursive: true});
	writeFileSync(path, contents);
}

chmodSync(`${root}dist/cli.cjs`, 0o755);
const inputs = [program, schema, work, ui].flatMap(({metafile}) => Object.keys(metafile.inputs));
writeFileSync(`${root}dist/THIRD-PARTY-NOTICES.txt`, thirdPartyNotices(inputs, root));
writeFileSync(`${root}dist/profile.schema.json`, `${JSON.stringify(profileSchema, null, '\t')}\n`);
