import {mkdtempSync, rmSync, writeFileSync} from 'node:fs';
import {tmpdir} from 'node:os';
import {join} from 'node:path';
import {build} from 'esbuild';
import {expect, onTestFinished, test} from 'vitest';
// @ts-expect-error: a plain script of the build, without types.
import {mustApply, replaceKnown} from '../../build/mustApply.js';

const patch = (filter: RegExp) => ({
	name: 'some-patch',
	setup({onLoad}: {onLoad: (options: object, callback: () => object) => void}) {
		onLoad({filter}, () => ({contents: 'export default 2;'}));
	},
});

async function bundled(filter: RegExp): Promise<string> {
	const folder = mkdtempSync(join(tmpdir(), 'roomtare-test-'));
	onTestFinished(() => rmSync(folder, {recursive: true, force: true}));
	writeFileSync(join(folder, 'one.js'), "import two from './two.js'; console.log(two);");
	writeFileSync(join(folder, 'two.js'), 'export default 1;');
	const {outputFiles} = await build({
		entryPoints: [join(folder, 'one.js')],
		bundle: true,
		write: false,
		logLevel: 'silent',
		plugins: [mustApply(patch(filter))],
	});
	return outputFiles[0]!.text;
}

test('a patch that applies takes effect', async () => {
	expect(await bundled(/two\.js$/)).toMatch(/= 2;/);
});

test('a patch that matches nothing ends the build and says which', async () => {
	await expect(bundled(/three\.js$/)).rejects.toThrow('some-patch: onLoad /three\\.js$/ matched nothing');
});

test('a replacement of what is not there is refused', () => {
	expect(replaceKnown('a b a', 'a', 'c', 'text')).toBe('c b c');
	expect(() => replaceKnown('a b a', 'd', 'c', 'text')).toThrow('text: d is not there');
});
