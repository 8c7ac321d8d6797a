// kill -9 at random moments: `npm run kills -- COUNT [SEED]`. COUNT times in a walk that is typed through in a pseudo-terminal, and
// COUNT times in a process that saves in a loop. What was taken before must be on disk, the file must be whole, and the
// next start must go on without a question. Says how often what fell; ends with 1 where anything did.
import {spawn as spawnProcess, spawnSync} from 'node:child_process';
import {mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync} from 'node:fs';
import {tmpdir} from 'node:os';
import {join, resolve} from 'node:path';
import {fileURLToPath} from 'node:url';
import {spawn} from '@lydell/node-pty';
import {randomFrom} from './random.js';
import {saverBundle} from './saverBundle.js';

const projectFolder = resolve(fileURLToPath(new URL('.', import.meta.url)), '../..');
const program = join(projectFolder, 'dist/cli.cjs');
const count = Number(process.argv[2] ?? 20);
const seed = Number(process.argv[3] ?? Date.now());
if (!Number.isSafeInteger(count) || count < 1 || !Number.isSafeInteger(seed)) {
	console.error('npm run kills -- COUNT [SEED]');
	process.exit(2);
}

const random = randomFrom(seed);
const scratch = mkdtempSync(join(tmpdir(), 'roomtare-kills-'));
const falls = [];
const wait = ms => new Promise(done => setTimeout(done, ms));
const environment = home => ({
	PATH: process.env.PATH,
	HOME: home,
	TERM: 'xterm-256color',
	LANG: 'C.UTF-8',
	NO_COLOR: '1',
});

function read(path) {
	try {
		return JSON.parse(readFileSync(path, 'utf8'));
	} catch (error) {
		return {fault: String(error)};
	}
}

const run = (...args) =>
	spawnSync(process.execPath, [program, ...args], {env: environment(scratch), encoding: 'utf8'});

let folderCount = 0;
/** A new folder with an empty profile of sixteen channels, so that one walk has many answers. */
function freshRoom() {
	const folder = join(scratch, `room-${folderCount++}`);
	mkdirSync(folder);
	run('new', '--profiles', folder, '--name', 'Den', '--layout', '9.1.6', '--unit', 'm');
	return {folder, path: join(folder, 'den.json'), taken: 0};
}

/** How many lengths the screen says are taken: `[Tape 3/16]`. */
const shownTaken = written => Number([...written.matchAll(/Tape (\d+)\/16/g)].at(-1)?.[1] ?? -1);

async function oneWalk(room) {
	const child = spawn(process.execPath, [program, '--profiles', room.folder, 'walk', 'den'], {
		cols: 80,
		rows: 24,
		cwd: room.folder,
		env: environment(room.folder),
	});
	let written = '';
	let isOver = false;
	child.onData(text => {
		written += text;
	});
	const ended = new Promise(done => {
		child.onExit(() => {
			isOver = true;
			done();
		});
	});
	// A quarter of them while it starts.
	if (random.chance(0.75)) {
		const until = Date.now() + 10_000;
		while (shownTaken(written) < 0 && Date.now() < until && !isOver) await wait(5);
	}

	const killAt = Date.now() + random.next() * 1500;
	while (Date.now() < killAt && !isOver) {
		if (shownTaken(written) >= 0 && shownTaken(written) < 16 && random.next() < 0.6) {
			const length = (2 + random.next() * 0.3).toFixed(2);
			child.write(length);
			if (random.next() < 0.5) await wait(random.next() * 15);
			child.write('\r');
			const before = shownTaken(written);
			const until = Math.min(killAt, Date.now() + 400);
			while (Date.now() < until && shownTaken(written) === before) await wait(4);
		} else await wait(8);
	}

	if (isOver) return {kind: 'ended by itself', written};
	process.kill(child.pid, 'SIGKILL');
	await ended;
	const shown = shownTaken(written);
	const {tape, fault} = read(room.path);
	if (fault) return {kind: `unreadable: ${fault}`};
	const kept = (tape ?? []).length;
	if (kept < Math.max(shown, room.taken))
		return {kind: `${Math.max(shown, room.taken)} taken, ${kept} on disk`};
	const isStarted = shown >= 0;
	const isAsked = /is open in another|cannot be read|changed by another/.test(written);
	room.taken = kept;
	return {kind: isAsked ? 'a start that asks about an older run' : undefined, isStarted, shown};
}

async function walks() {
	let room = freshRoom();
	let [answers, started, whole] = [0, 0, 0];
	for (let round = 0; round < count; round++) {
		const before = room.taken;
		const {kind, isStarted, written} = await oneWalk(room);
		if (kind) falls.push(`walk ${round}: ${kind}${written ? ` ${written.slice(-300)}` : ''}`);
		answers += room.taken - before;
		if (isStarted) started++;
		if (room.taken >= 14 || kind) {
			// The program itself must read what the kills left.
			const {status} = run('check', room.path, '--json');
			if (status === 2) falls.push(`walk ${round}: check cannot use the file`);
			else whole++;
			rmSync(room.folder, {recursive: true});
			room = freshRoom();
		}
	}

	console.log(
		`${count} kills in a walk (${started} after the first question was drawn): ${answers} answers on disk, ${whole} files checked whole.`,
	);
}

async function saves() {
	const bundle = await saverBundle(scratch);
	const {path, folder} = freshRoom();
	let done = 0;
	for (let round = 0; round < count; round++) {
		const child = spawnProcess(process.execPath, [bundle, path], {stdio: ['ignore', 'pipe', 'pipe']});
		let [told, trouble] = ['', ''];
		child.stdout.on('data', data => {
			told += data;
		});
		child.stderr.on('data', data => {
			trouble += data;
		});
		const ended = new Promise(over => child.on('close', over));
		while (told === '' && trouble === '') await wait(3);
		await wait(random.next() * 120);
		child.kill('SIGKILL');
		await ended;
		const last = Number(told.trim().split('\n').at(-1) || done);
		const {note, fault} = read(path);
		if (trouble) falls.push(`save ${round}: ${trouble.slice(0, 300)}`);
		else if (fault || !(Number(note) >= last))
			falls.push(`save ${round}: ${fault ?? `${last} told, ${note} on disk`}`);
		done = Math.max(done, last);
	}

	const litter = readdirSync(folder).filter(name => !/^den(\.previous)?\.json$/.test(name));
	console.log(
		`${count} kills in saving: ${done} saves told, the last on disk each time; ${litter.length} temporary files of killed saves beside it, which the next start of the app sweeps when they are an hour old.`,
	);
}

await walks();
await saves();
rmSync(scratch, {recursive: true, force: true});
for (const fall of falls.slice(0, 20)) console.error(fall);
console.log(falls.length === 0 ? 'Nothing lost.' : `${falls.length} falls.`);
process.exit(falls.length === 0 ? 0 : 1);
