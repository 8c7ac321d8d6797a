import {mkdtempSync, rmSync} from 'node:fs';
import {tmpdir} from 'node:os';
import {join, resolve} from 'node:path';
import {pathToFileURL} from 'node:url';
import {build} from 'esbuild';
import fc from 'fast-check';
import {afterAll, beforeAll, expect, test} from 'vitest';
// @ts-expect-error: a plain script of the build, without types.
import {quickFrames} from '../../../build/quick/plugin.js';
import {oneCellText} from '../../../source/report/oneCellText.ts';

type Options = {readonly transformers: ReadonlyArray<(line: string, index: number) => string>};
type Output = {
	write: (x: number, y: number, text: string, options: Options) => void;
	clip: (clip: object) => void;
	unclip: () => void;
	get: () => {readonly output: string; readonly height: number};
};
type OutputClass = new (size: {readonly width: number; readonly height: number}) => Output;

const projectFolder = resolve(import.meta.dirname, '../../..');
const folder = mkdtempSync(join(tmpdir(), 'roomtare-test-'));
let Quick: OutputClass;
let Whole: OutputClass;
let quickWidth: (text: string) => number;
let wholeWidth: (text: string) => number;

async function load(name: string, plugins: readonly unknown[]) {
	const outfile = join(folder, `${name}.mjs`);
	const contents =
		"export {default as Output} from './node_modules/ink/build/output.js'; export {default as width} from './node_modules/string-width/index.js';";
	await build({
		stdin: {contents, resolveDir: projectFolder},
		outfile,
		bundle: true,
		platform: 'node',
		format: 'esm',
		plugins: plugins as never,
	});
	return import(pathToFileURL(outfile).href);
}

beforeAll(async () => {
	({Output: Quick, width: quickWidth} = await load('quick', [quickFrames]));
	({Output: Whole, width: wholeWidth} = await load('whole', []));
});
afterAll(() => rmSync(folder, {recursive: true, force: true}));

type Write = {readonly x: number; readonly y: number; readonly text: string; readonly style: number};

const stylings: ReadonlyArray<(line: string) => string> = [
	line => line,
	line => `\u001b[1m${line}\u001b[22m`,
	line => `\u001b[2m${line}\u001b[22m`,
	line => `\u001b[36m\u001b[1m${line}\u001b[22m\u001b[39m`,
];

/** What a frame looks like: each line as cells with the styles that are on there, blanks at its end left out. */
function look(frame: string): string[][] {
	return frame.split('\n').map(line => {
		const cells: string[] = [];
		let on: string[] = [];
		for (const [, code, character] of line.matchAll(/\u001b\[(\d+)m|(.)/gu)) {
			if (code === '22') on = on.filter(style => style !== '1' && style !== '2');
			else if (code === '39') on = on.filter(style => style !== '36');
			else if (code) on = [...on, code].sort();
			else cells.push(character === ' ' ? ' ' : `${character} ${on.join()}`);
		}

		while (cells.at(-1) === ' ') cells.pop();
		return cells;
	});
}

function frameOf(Class: OutputClass, writes: readonly Write[], width = 40, height = 6) {
	const output = new Class({width, height});
	for (const {x, y, text, style} of writes) output.write(x, y, text, {transformers: [stylings[style]!]});
	return output.get();
}

const characters = fc.constantFrom(...'abc 12 −·▸▏▄▀█┻━▼✓⠿′″…é', '客', '🙂');
const writes = fc.array(
	fc.record({
		x: fc.nat(39),
		y: fc.nat(6),
		text: fc.array(characters, {maxLength: 20}).map(list => list.join('')),
		style: fc.nat(stylings.length - 1),
	}),
	{maxLength: 8},
);

test('a quick frame looks as the one of Ink, for any texts at any places, also over each other', () => {
	fc.assert(
		fc.property(writes, list => {
			const quick = frameOf(Quick, list);
			const whole = frameOf(Whole, list);
			expect(quick.height).toBe(whole.height);
			expect(look(quick.output)).toEqual(look(whole.output));
		}),
		{seed: 20260418, numRuns: 2000},
	);
});

test('texts of several lines side by side are joined as Ink joins them', () => {
	const list = [
		{x: 0, y: 0, text: 'Front left\nFront right', style: 1},
		{x: 20, y: 0, text: '9.4 ft\n9.5 ft', style: 2},
	];
	expect(look(frameOf(Quick, list).output)).toEqual(look(frameOf(Whole, list).output));
	expect(frameOf(Quick, list).output.split('\n')).toHaveLength(6);
});

test('a clipped text is left to Ink', () => {
	const draw = (Class: OutputClass) => {
		const output = new Class({width: 10, height: 2});
		output.clip({x1: 0, x2: 4, y1: 0, y2: 1});
		output.write(0, 0, 'abcdefgh', {transformers: []});
		output.unclip();
		return output.get().output;
	};

	expect(draw(Quick)).toBe(draw(Whole));
	expect(draw(Quick)).toContain('abcd');
});

test('the quick width of a text is the one that the package finds', () => {
	fc.assert(
		fc.property(
			fc.array(fc.oneof(characters, fc.string({unit: 'grapheme', maxLength: 3})), {maxLength: 20}),
			list => {
				const text = list.join('');
				expect(quickWidth(text)).toBe(wholeWidth(text));
				expect(quickWidth(`\u001b[1m${text}\u001b[22m`)).toBe(wholeWidth(text));
			},
		),
		{seed: 20260418, numRuns: 2000},
	);
});

test('every character that counts as plain takes one cell', () => {
	const wrong = Array.from({length: 0x3000}, (_, code) => String.fromCharCode(code)).filter(
		character => oneCellText.test(character) && wholeWidth(character) !== 1,
	);
	expect(wrong).toEqual([]);
});
