import {readFile} from 'node:fs/promises';
import {dirname, join} from 'node:path';
import {fileURLToPath} from 'node:url';

const folder = fileURLToPath(new URL('.', import.meta.url));

/** Modules of packages, and those of this folder that stand in front of them. */
const fronts = [
	[/[/\\]node_modules[/\\]ink[/\\]build[/\\]output\.js$/, 'output.js'],
	[/[/\\]node_modules[/\\]string-width[/\\]index\.js$/, 'stringWidth.js'],
];

/**
Puts a quick module in front of those of Ink that join a frame and measure a text: it answers for plain texts, and
hands the rest to the module behind it. Comes before other plugins that load modules of packages.
*/
export const quickFrames = {
	name: 'quick-frames',
	setup({onLoad, onResolve}) {
		onResolve({filter: /^quick-whole:/}, ({importer}) => ({path: importer, suffix: '?whole'}));
		for (const [filter, file] of fronts) {
			onLoad({filter}, async ({path, suffix}) => {
				if (suffix === '?whole') return undefined;
				const text = await readFile(join(folder, file), 'utf8');
				const contents = text.replaceAll("'./plain.js'", JSON.stringify(join(folder, 'plain.js')));
				return {contents, resolveDir: dirname(path)};
			});
		}
	},
};
