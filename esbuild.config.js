// Bundles the program for publishing: one entry, chunks loaded when a command needs them.
import {readFileSync, rmSync} from 'node:fs';
import {build} from 'esbuild';

const {version} = JSON.parse(readFileSync(new URL('package.json', import.meta.url), 'utf8'));

rmSync(new URL('dist', import.meta.url), {recursive: true, force: true});

await build({
	entryPoints: ['source/cli.ts'],
	outdir: 'dist',
	bundle: true,
	splitting: true,
	platform: 'node',
	format: 'esm',
	target: 'node20',
	minify: true,
	chunkNames: 'chunks/[name]-[hash]',
	define: {
		'process.env.NODE_ENV': '"production"',
		ROOMTARE_VERSION: JSON.stringify(version),
	},
	// CommonJS dependencies ask for `require`; ESM has none unless it is made.
	banner: {
		js: "import {createRequire as __createRequire} from 'node:module';const require=__createRequire(import.meta.url);",
	},
	plugins: [
		{
			// Ink imports its developer tools statically inside an optional chunk; a published program has no use for them.
			name: 'no-devtools',
			setup({onResolve, onLoad}) {
				onResolve({filter: /^react-devtools-core$/}, ({path}) => ({path, namespace: 'empty'}));
				onLoad({filter: /.*/, namespace: 'empty'}, () => ({contents: 'export default {}'}));
			},
		},
	],
	logLevel: 'warning',
});
