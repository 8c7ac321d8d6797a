import {isBuiltin} from 'node:module';

/** Ink imports its developer tools statically inside an optional chunk; a published program has no use for them. */
export const noDeveloperTools = {
	name: 'no-developer-tools',
	setup({onResolve, onLoad}) {
		onResolve({filter: /^react-devtools-core$/}, ({path}) => ({path, namespace: 'empty'}));
		onLoad({filter: /.*/, namespace: 'empty'}, () => ({contents: 'export default {}'}));
	},
};

/** Node's own modules do nothing when loaded: an import of which nothing is used can go. */
export const quietBuiltins = {
	name: 'quiet-builtins',
	setup({onResolve}) {
		onResolve({filter: /./}, ({path, kind}) =>
			kind === 'import-statement' && isBuiltin(path) ? {path, external: true, sideEffects: false} : undefined,
		);
	},
};
