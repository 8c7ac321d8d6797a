// The argument parser can also look for the caller's package.json and normalise it; for that it brings two thirds of
// its code, child processes and licence tables. The program always hands over its package itself, so that this part
// is never reached. Here it is replaced by a function that says so, and the rest marked as free of side effects.
import {readFile} from 'node:fs/promises';

const importLine =
	/import \{ a as readPackageUpSync, n as normalizePackageData \} from '\.\/dependencies\.js';/;
const unreachable = `
const notBuiltIn = () => { throw new Error('The package must be given to the argument parser.'); };
const readPackageUpSync = notBuiltIn;
const normalizePackageData = notBuiltIn;
`;

export const leanMeow = {
	name: 'lean-meow',
	setup({onLoad}) {
		onLoad({filter: /[/\\]meow[/\\]build[/\\]options\.js$/}, async ({path}) => {
			const text = await readFile(path, 'utf8');
			if (!importLine.test(text))
				throw new Error(`${path}: not as expected; the build must be looked at again.`);
			return {contents: text.replace(importLine, unreachable)};
		});
		onLoad({filter: /[/\\]meow[/\\]build[/\\]dependencies\.js$/}, async ({path}) => {
			const text = await readFile(path, 'utf8');
			const calls = /^((?:var|const) [\w$]+ = )?((?:require\w*|getDefaultExportFromCjs|promisify)[\w$]*\()/gm;
			if (!calls.test(text)) throw new Error(`${path}: not as expected; the build must be looked at again.`);
			return {contents: text.replace(calls, (_, start = '', call) => `${start}/* @__PURE__ */ ${call}`)};
		});
	},
};
