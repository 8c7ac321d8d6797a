import {HtmlValidate} from 'html-validate';
import {describe, expect, test} from 'vitest';
import {cellWidth} from '../../../source/report/fitCells.ts';
import {assembleSheet} from '../../../source/report/sheet/assemble.ts';
import {sheetHtml} from '../../../source/report/sheet/html.ts';
import {sheetMarkdown} from '../../../source/report/sheet/markdown.ts';
import type {SvgPlan} from '../../../source/report/sheet/planSvg.ts';
import {sheetText} from '../../../source/report/sheet/text.ts';
import {input} from './scenario.ts';

const content = assembleSheet(input());
const plan: SvgPlan = {
	widthMetres: 4,
	lengthMetres: 5,
	widthText: '4.00 m',
	lengthText: '5.00 m',
	points: [
		{label: 'FL', kind: 'speaker', x: 0.8, y: 0.4},
		{label: '<b>', kind: 'seat', x: 2, y: 4},
		{label: '', kind: 'screen', x: 2, y: 0},
	],
};

describe('HTML', () => {
	const html = sheetHtml(content, plan);

	test('is valid by a general HTML validator', async () => {
		const report = await new HtmlValidate({extends: ['html-validate:recommended']}).validateString(html);
		expect(
			report.results.flatMap(({messages}) => messages.map(({ruleId, message}) => `${ruleId}: ${message}`)),
		).toEqual([]);
	});

	test('holds no script and asks for nothing from anywhere', () => {
		expect(html).not.toMatch(/<script|<link|<img|url\(|@import|https?:\/\/(?!www\.w3\.org\/2000\/svg)/i);
	});

	test('shows names with angle brackets as text', () => {
		expect(html).toContain('Invented den &amp; &lt;studio&gt;');
		expect(html).not.toContain('<studio>');
		expect(html).toContain('&lt;b&gt;</text>');
	});

	test('draws the plan to scale: both sides of the room by the same factor', () => {
		const [, width, height] =
			/<rect x="\d+" y="\d+" width="([\d.]+)" height="([\d.]+)" fill="none"/.exec(html) ?? [];
		expect(Number(height) / Number(width)).toBeCloseTo(5 / 4, 6);
	});

	test('sets many cables in two columns, still valid and with every label', async () => {
		const cables = Array.from({length: 40}, (_, index) => ({...content.cables[0]!, label: `cable ${index}`}));
		const crowded = sheetHtml({...content, cables}, plan);
		for (const {label} of cables) expect(crowded).toContain(`<b>${label}</b>`);
		const report = await new HtmlValidate({extends: ['html-validate:recommended']}).validateString(crowded);
		expect(report.valid).toBe(true);
	});

	test('counts a bold name a fifth wider than other cells, so that no row of what is typed in takes two lines', () => {
		const dialPt = (name: string, crossover: string) => {
			const receiver = content.receiver.map(row => ({...row, name, crossover}));
			const page = sheetHtml({...content, receiver, places: [], cables: []});
			return Number(/--dial: ([\d.]+)pt/.exec(page)![1]);
		};
		// 40 characters more in a name narrow the letters as 48 in another cell do; both far from the largest size.
		expect(dialPt('n'.repeat(80), 'c'.repeat(20))).toBeCloseTo(dialPt('n'.repeat(40), 'c'.repeat(68)), 1);
	});

	test('leaves the figure out where the tape has not told where things stand', () => {
		expect(sheetHtml(content)).not.toContain('<figure');
	});
});

describe('Markdown', () => {
	test('has as many cells in every row of a table as in its head, bars in names included', () => {
		const tables = sheetMarkdown(content)
			.split('\n\n')
			.filter(part => part.startsWith('## ') || part.startsWith('|'));
		const lines = tables.flatMap(part => part.split('\n')).filter(line => line.startsWith('|'));
		expect(lines.length).toBeGreaterThan(8);
		const cells = (line: string) => line.replaceAll('\\|', '').split('|').length;
		const block = sheetMarkdown(content).split('## Where it stands')[1]!.split('## ')[0]!;
		const counts = new Set(
			block
				.split('\n')
				.filter(line => line.startsWith('|'))
				.map(cells),
		);
		expect(counts.size).toBe(1);
		expect(block).toContain('Sofa \\| middle');
	});
});

describe('text', () => {
	test.each([60, 80, 120])('no line is wider than %i cells, and every trim is on it', width => {
		const text = sheetText(content, width);
		for (const line of text.split('\n')) expect(cellWidth(line)).toBeLessThanOrEqual(width);
		for (const {trim} of content.receiver) expect(text).toContain(trim);
	});
});
