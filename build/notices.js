// Licences of the packages whose code is in the bundle, from the files that the bundler read.
import {existsSync, readdirSync, readFileSync} from 'node:fs';
import {join} from 'node:path';

/** Folder of the package that a bundled file belongs to, or nothing for the program's own files. */
function packageFolder(input) {
	return /^(.*node_modules\/(?:@[^/]+\/)?[^/]+)\//.exec(input)?.[1];
}

function licenceText(folder, {name, license, author}) {
	const files = readdirSync(folder).filter(file => /^(licen[cs]e|copying|notice)/i.test(file));
	// Packages that carry others within them list those in a file of their own.
	for (const inner of ['build/licenses.md']) if (existsSync(join(folder, inner))) files.push(inner);
	if (files.length > 0)
		return files.map(file => readFileSync(join(folder, file), 'utf8').trim()).join('\n\n');
	if (!license) throw new Error(`${name}: no licence found; it cannot be shipped.`);
	const by = typeof author === 'string' ? author : author?.name;
	return `Licence: ${license}${by ? `\nCopyright: ${by}` : ''}\n(The package carries no licence file.)`;
}

/**
Text with the name, version and licence of every package in the bundle.

@param inputs - Paths of the bundled files, relative to `root`.
*/
export function thirdPartyNotices(inputs, root) {
	const folders = [...new Set(inputs.map(input => packageFolder(input)).filter(Boolean))].sort();
	const entries = folders.map(folder => {
		const at = join(root, folder);
		const description = JSON.parse(readFileSync(join(at, 'package.json'), 'utf8'));
		return `${description.name} ${description.version}\n\n${licenceText(at, description)}`;
	});
	const head = 'This program contains code of the following packages. Each is under its own licence.';
	return `${[head, ...entries].join(`\n\n${'-'.repeat(80)}\n\n`)}\n`;
}
