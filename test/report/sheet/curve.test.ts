import {HtmlValidate} from 'html-validate';
import {expect, test} from 'vitest';
import {assembleSheet} from '../../../source/report/sheet/assemble.ts';
import {sheetCurves} from '../../../source/report/sheet/curveOf.ts';
import {sheetHtml} from '../../../source/report/sheet/html.ts';
import {sheetMarkdown} from '../../../source/report/sheet/markdown.ts';
import {sheetText} from '../../../source/report/sheet/text.ts';
import {levelledPair, referencePair} from '../../../source/study/hearing/roundPairs.ts';
import {type MadeLine, madeRecordings} from '../../study/hearing/recordedCurves.ts';
import {input, profile} from './scenario.ts';

const before: MadeLine = {source: 'FL', seat: 'sofa', round: 'first', dipDb: 12, decaySeconds: 0.4};
// The recorder stood 8 dB louder the second time.
const after: MadeLine = {...before, round: 'proof', levelDb: -12, dipDb: 5, decaySeconds: 0.3};
const recorded = (...lines: MadeLine[]) => ({...profile, ...madeRecordings(lines)});
const dataOf = (own: typeof profile) => {
	const pair = referencePair(own);
	return {...input(), profile: own, ...(pair && {response: levelledPair(pair, 6)})};
};
const contentOf = (own: typeof profile) => assembleSheet(dataOf(own));

test('before and after are said with dip and decay on every form of the page', () => {
	const own = recorded(before, after);
	const forms = [sheetText(contentOf(own), 200), sheetMarkdown(contentOf(own))];
	for (const page of [...forms, sheetHtml(contentOf(own), undefined, sheetCurves(dataOf(own)))]) {
		expect(page).toMatch(
			/Front left at Sofa.*before, 2026-04-18: dip −1[01] dB at 6[234] Hz, dies away in 0\.40 s/,
		);
		expect(page).toMatch(/after, 2026-04-19: dip −[45] dB at 6[234] Hz, dies away in 0\.30 s/);
		expect(page).toContain('recorder’s own colour');
	}
});

test('the page draws both lines with their words as alternative, valid, and what stands now is solid', async () => {
	const own = recorded(before, after);
	const html = sheetHtml(contentOf(own), undefined, sheetCurves(dataOf(own)));
	const [, label, inside] = /<figure class="curve"><svg[^>]*aria-label="([^"]*)"[^>]*>(.*?)<\/svg>/s.exec(
		html,
	)!;
	expect(label).toContain('dip −');
	const curves = inside!.split('<path').filter(part => part.includes('fill="none"'));
	expect(curves.map(part => part.includes('stroke-dasharray'))).toEqual([true, false]);
	const report = await new HtmlValidate({extends: ['html-validate:recommended']}).validateString(html);
	expect(report.results.flatMap(({messages}) => messages)).toEqual([]);
});

test('curves of two rounds lie on each other where only the recorder’s gain differs', () => {
	const own = recorded(before, {...before, round: 'proof', levelDb: -6});
	const [then, now] = sheetCurves(dataOf(own))!.curves;
	for (const [index, level] of then!.curve.levelsDb.entries())
		expect(now!.curve.levelsDb[index]).toBeCloseTo(level, 9);
});

test('a crowded page leaves the drawing out and says so, with the words still there', () => {
	const own = recorded(before);
	const content = contentOf(own);
	const cables = Array.from({length: 60}, (_, index) => ({...content.cables[0]!, label: `cable ${index}`}));
	const html = sheetHtml({...content, cables}, undefined, sheetCurves(dataOf(own)));
	expect(html).not.toContain('<figure class="curve">');
	expect(html).toContain('There is no room here to draw it.');
	expect(html).toMatch(/as first recorded, 2026-04-18: dip −1[01] dB/);
});

test('without a recording at the reference seat the page has neither drawing nor words', () => {
	for (const own of [profile, recorded({...before, seat: 'chair'})]) {
		expect(sheetCurves(dataOf(own))).toBeUndefined();
		expect(sheetText(contentOf(own), 80)).not.toContain('RECORDED');
		expect(sheetHtml(contentOf(own), undefined, sheetCurves(dataOf(own)))).not.toMatch(
			/class="curve"|room here/,
		);
	}
});
