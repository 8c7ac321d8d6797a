// Random keys on the app, on files in memory that refuse and change, in terminals of many sizes.
import {EventEmitter} from 'node:events';
import {PassThrough} from 'node:stream';

const named = [
	'enter',
	'escape',
	'up',
	'down',
	'left',
	'right',
	'pageUp',
	'pageDown',
	'home',
	'end',
	'tab',
	'erase',
	'eraseAll',
];
const typed = [
	'9-4',
	'2.86 m',
	'286cm',
	'74.2',
	'0',
	'-1',
	'1e9',
	'999999',
	'y',
	'n',
	'80',
	'4 ohm',
	'5.1.2',
	'100 W',
	'2',
	'3',
	'1',
	'9\' 4 1/2"',
	'20',
	'FL',
	'客',
	'-0.0001',
	'50 ms',
	'q',
	'u',
	'?',
	'd',
	'w',
	'l',
	'c',
	'p',
	' ',
	'e',
	'k',
	'x',
	'/',
];
const frames = /\b(?:NaN|undefined|\[object)\b|-?Infinity\b/;

class Screen extends EventEmitter {
	isTTY = true;
	frame = '';
	write = text => {
		this.frame = text;
		return true;
	};
}

const streams = (columns, rows) => {
	const stdin = new PassThrough();
	for (const name of ['setRawMode', 'ref', 'unref']) stdin[name] = () => stdin;
	return {stdin: Object.assign(stdin, {isTTY: true}), stdout: Object.assign(new Screen(), {columns, rows})};
};

const pause = () => new Promise(done => setImmediate(done));

/**
One session of the app.

@returns Keys pressed, frames looked at, and what is wrong; `problem` undefined where nothing is.
*/
export async function runSession(subject, random, profile) {
	const {memoryFiles, startSession, pressesOf, App, render, createElement, checkProfile, cellWidth} = subject;
	const files = memoryFiles({room: profile, other: profile}, random.chance(0.3) ? ['other'] : []);
	const session = startSession(
		{files, now: () => new Date('2026-04-18T20:00:00Z')},
		random.chance(0.7) ? 'room' : undefined,
	);
	const columns = random.pick([20, 40, 59, 60, 80, 126, 160]);
	const {stdin, stdout} = streams(columns, random.pick([5, 10, 16, 24, 45]));
	const app = render(createElement(App, {session}), {
		stdin,
		stdout,
		debug: true,
		exitOnCtrlC: false,
		patchConsole: false,
	});
	let keys = 0;
	let shown = 0;
	const log = [];
	try {
		for (; keys < 120 && session.screen().kind !== 'left'; keys++) {
			if (random.chance(0.03))
				files.refusals.push({why: random.pick(['changed', 'busy', 'failed']), text: 'Refused.'});
			if (random.chance(0.02)) files.writeElsewhere('room', profile);
			if (random.chance(0.1)) session.keep();
			const press = random.chance(0.5)
				? [{key: random.chance(0.5) ? 'enter' : random.pick(named)}]
				: pressesOf(random.pick(typed), {});
			log.push(press.map(({key, text}) => text ?? key).join(''));
			session.press(press);
			await pause();
			shown++;
			const bad = frames.exec(stdout.frame);
			if (bad) return {keys, shown, problem: `frame holds ${bad[0]} after ${log.join(' ')}\n${stdout.frame}`};
			const wide = stdout.frame
				.split('\n')
				.find(line => cellWidth(line.replace(/\u001b\[[\d;]*m/g, '')) > columns);
			if (wide)
				return {keys, shown, problem: `a line of more than ${columns} cells after ${log.join(' ')}: ${wide}`};
			for (const [name, kept] of files.kept) {
				const problems = keys % 10 === 0 ? checkProfile(kept) : [];
				if (problems.length > 0)
					return {
						keys,
						shown,
						problem: `${name} could not be read again after ${log.join(' ')}: ${JSON.stringify(problems[0])}`,
					};
			}
		}

		session.interrupt();
		return {keys, shown};
	} catch (error) {
		return {keys, shown, problem: `fault after ${log.join(' ')}: ${error?.stack ?? error}`};
	} finally {
		app.unmount();
	}
}
