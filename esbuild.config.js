// Bundles the program for publishing: one entry, chunks loaded when a command needs them.
import {chmodSync, readFileSync, rmSync, writeFileSync} from 'node:fs';
import {fileURLToPath} from 'node:url';
import {build} from 'esbuild';
import {leanMeow} from './build/leanMeow.js';
import {thirdPartyNotices} from './build/notices.js';
import {noDeveloperTools, quietBuiltins} from './build/plugins.js';

const root = fileURLToPath(new URL('.', import.meta.url));
const {version} = JSON.parse(readFileSync(`${root}package.json`, 'utf8'));

rmSync(`${root}dist`, {recursive: true, force: true});

const {metafile} = await build({
	absWorkingDir: root,
	entryPoints: ['source/cli.ts'],
	outdir: 'dist',
	bundle: true,
	splitting: true,
	platform: 'node',
	format: 'esm',
	target: 'node20',
	minify: true,
	metafile: true,
	legalComments: 'none',
	chunkNames: 'chunks/[name]-[hash]',
	define: {
		// Without it React measures every render and keeps the measurements.
		'process.env.NODE_ENV': '"production"',
		ROOMTARE_VERSION: JSON.stringify(version),
	},
	// CommonJS dependencies ask for `require`; ESM has none unless it is made.
	banner: {
		js: "import {createRequire as __createRequire} from 'node:module';const require=__createRequire(import.meta.url);",
	},
	plugins: [leanMeow, noDeveloperTools, quietBuiltins],
	logLevel: 'warning',
});

chmodSync(`${root}dist/cli.js`, 0o755);
writeFileSync(`${root}dist/THIRD-PARTY-NOTICES.txt`, thirdPartyNotices(Object.keys(metafile.inputs), root));

// The schema is computed from the one in the source, so that the shipped file cannot be an older one.
const {outputFiles} = await build({
	absWorkingDir: root,
	entryPoints: ['source/profile/jsonSchema.ts'],
	bundle: true,
	platform: 'node',
	format: 'esm',
	write: false,
	logLevel: 'warning',
});
const moduleUrl = `data:text/javascript;base64,${Buffer.from(outputFiles[0].contents).toString('base64')}`;
const {profileJsonSchema} = await import(moduleUrl);
writeFileSync(`${root}dist/profile.schema.json`, `${JSON.stringify(profileJsonSchema(), null, '\t')}\n`);
