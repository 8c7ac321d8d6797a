import {HtmlValidate} from 'html-validate';
import {expect, test} from 'vitest';
import {cellWidth} from '../../../source/report/fitCells.ts';
import {sayIn} from '../../../source/report/said/say.ts';
import {cableLabels, labelsHtml, labelsText} from '../../../source/report/wiring/labels.ts';
import {wiringText} from '../../../source/report/wiring/text.ts';
import {wiring} from '../../../source/study/wiring/wiring.ts';
import {profile} from '../sheet/scenario.ts';

const result = wiring(profile);
const labels = cableLabels(result.cables, sayIn(profile));

test('each cable gets two labels whose ends mirror each other', () => {
	expect(labels).toHaveLength(2 * result.cables.length);
	for (let index = 0; index < labels.length; index += 2) {
		expect(labels[index]!.here).toBe(labels[index + 1]!.there);
		expect(labels[index]!.there).toBe(labels[index + 1]!.here);
	}
});

test('labels name ends by their plain names, as somebody behind a rack reads them', () => {
	const ends = labels.flatMap(({here, there}) => [here, there]);
	expect(ends).toContain('receiver, Front left');
	expect(ends.filter(end => /\b(FL|FR|TpSiL)\b/.test(end))).toEqual([]);
});

test.each([60, 80, 140])('label strips fit %i cells and keep their frames closed', width => {
	for (const line of labelsText(labels, width).trimEnd().split('\n')) {
		expect(cellWidth(line)).toBeLessThanOrEqual(width);
		expect(line).toMatch(/^[+|].*[+|]$/);
	}
});

test('the label page is valid HTML without script', async () => {
	const html = labelsHtml(labels, 'Labels, <den>');
	const report = await new HtmlValidate({extends: ['html-validate:recommended']}).validateString(html);
	expect(report.results.flatMap(({messages}) => messages.map(({message}) => message))).toEqual([]);
	expect(html).not.toContain('<script');
	expect(html).toContain('&lt;den&gt;');
});

test('the text names every cable, the order with mains last, and what is still unknown', () => {
	const text = wiringText(result, sayIn(profile), 100);
	for (const {id} of result.cables) expect(text).toContain(id);
	expect(text.indexOf('Mains last')).toBeGreaterThan(text.indexOf('Line cables'));
	expect(text).toContain('have no length yet');
});
