import {execFileSync} from 'node:child_process';
import {readdirSync, readFileSync, statSync} from 'node:fs';
import {join} from 'node:path';
import {expect, test} from 'vitest';
import {cleanEnvironment, projectFolder, runProgram, temporaryFolder} from './harness/program.ts';

type Packed = {
	readonly filename: string;
	readonly files: ReadonlyArray<{readonly path: string; readonly mode: number}>;
};

/** Packs the project as it stands; the build was made before the tests. */
function pack(folder: string): Packed {
	const listed = execFileSync('npm', ['pack', '--ignore-scripts', '--json', '--pack-destination', folder], {
		cwd: projectFolder,
		encoding: 'utf8',
		stdio: ['ignore', 'pipe', 'ignore'],
	});
	return (JSON.parse(listed) as Packed[])[0]!;
}

test('the package holds what it needs and nothing else', () => {
	const {files} = pack(temporaryFolder());
	const top = new Set(files.map(({path}) => path.split('/')[0]));
	const allowed = new Set(['dist', 'profiles', 'package.json', 'LICENSE', 'README.md']);
	expect([...top].filter(name => !allowed.has(name!))).toEqual([]);
	const paths = files.map(({path}) => path);
	for (const path of [
		'dist/cli.cjs',
		'dist/profile.schema.json',
		'dist/THIRD-PARTY-NOTICES.txt',
		'LICENSE',
	]) {
		expect(paths).toContain(path);
	}

	expect(paths.filter(path => /\.(tsx?|map|test\.js)$/.test(path))).toEqual([]);
});

test('the package works where it is installed without network into an empty folder', async () => {
	const folder = temporaryFolder();
	const {filename} = pack(folder);
	execFileSync(
		'npm',
		['install', '--offline', '--no-audit', '--no-fund', '--cache', join(folder, 'cache'), `./${filename}`],
		{cwd: folder, env: cleanEnvironment(folder), stdio: 'pipe'},
	);
	expect(readdirSync(join(folder, 'node_modules')).filter(name => !name.startsWith('.'))).toEqual([
		'roomtare',
	]);
	const program = join(folder, 'node_modules/.bin/roomtare');
	expect(statSync(program).mode & 0o111).toBe(0o111);
	const {version} = JSON.parse(readFileSync(join(projectFolder, 'package.json'), 'utf8')) as {
		version: string;
	};
	expect(execFileSync(program, ['--version'], {encoding: 'utf8', env: cleanEnvironment(folder)})).toBe(
		`${version}\n`,
	);
	const installed = join(folder, 'node_modules/roomtare');
	const demo = await runProgram(['solve', join(installed, 'profiles/cellar-2026.json'), '--json'], {
		program,
		folder,
	});
	expect(demo.code).toBe(0);
	expect(JSON.parse(demo.stdout).channels).toHaveLength(11);
	expect(await runProgram([], {program, folder})).toMatchObject({code: 0});
});

test('the published program measures no renders and carries no developer tools', () => {
	const dist = join(projectFolder, 'dist');
	const texts = (readdirSync(dist, {recursive: true, encoding: 'utf8'}) as string[])
		.filter(path => /\.[cm]?js$/.test(path))
		.map(path => readFileSync(join(dist, path), 'utf8'));
	expect(texts.length).toBeGreaterThan(3);
	for (const unwanted of ['performance.measure', 'connectToDevTools', 'Sec-WebSocket'])
		expect(texts.filter(text => text.includes(unwanted))).toEqual([]);
});

test('the published program starts no other program and reaches no network', () => {
	const dist = join(projectFolder, 'dist');
	const files = (readdirSync(dist, {recursive: true, encoding: 'utf8'}) as string[]).filter(path =>
		/\.[cm]?js$/.test(path),
	);
	const reached = /child_process|\bfetch\(|["'](node:)?(net|tls|dgram|dns|https?|http2|cluster)["']/;
	expect(files.length).toBeGreaterThan(3);
	expect(files.filter(path => reached.test(readFileSync(join(dist, path), 'utf8')))).toEqual([]);
});

test('the notices name the licence of every package in the bundle', () => {
	const notices = readFileSync(join(projectFolder, 'dist/THIRD-PARTY-NOTICES.txt'), 'utf8');
	for (const name of ['zod', 'ink', 'react', 'meow', 'string-width', 'yoga-layout']) {
		expect(notices).toMatch(new RegExp(`^${name} \\d+\\.`, 'm'));
	}

	expect(notices).not.toContain('node_modules');
});
