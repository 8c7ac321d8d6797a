import {expect, test} from 'vitest';
import {type FindingOf, finding} from '../../../source/profile/finding.ts';
import {saidJson} from '../../../source/report/said/json.ts';
import {distinct, headOf, sentenceOf} from '../../../source/report/said/said.ts';
import {sayIn} from '../../../source/report/said/say.ts';
import type {WiringFacts} from '../../../source/study/wiring/facts.ts';

const say = sayIn({
	seats: [],
	wiring: {outlets: [{id: 'o1', name: 'Rack strip', kind: 'strip', volts: 230}]},
});
const unrated: FindingOf<WiringFacts> = finding('doubt', 'outlet-unrated', ['o1']);
const short: FindingOf<WiringFacts> = finding('problem', 'run-too-short', ['c1'], {
	cutMetres: 1.2,
	straightMetres: 3.048,
});
const open: FindingOf<WiringFacts> = finding('advice', 'lengths-unknown', [], {unknown: 2, of: 9});

test('a row takes the head, which begins small and has no full stop; a page takes name and all', () => {
	expect(headOf(unrated, say)).toBe('no rating entered');
	expect(sentenceOf(unrated, say)).toBe(
		'Rack strip: no rating entered. Read amperes or watts off its plate before more is plugged in.',
	);
});

test('what is about the whole begins with a capital', () => {
	expect(sentenceOf({...open, facts: {unknown: 2, of: 9}} as typeof open, say)).toMatch(
		/^2 of 9 cables have no length yet\. Lay /,
	);
	expect(sentenceOf(finding('advice', 'polarity-reversed', []), say)).toMatch(/^Plus and minus/);
});

test('a sentence follows the unit that the reader likes, a finding does not', () => {
	expect(sentenceOf(short, say)).toContain('cut to 1.20 m, but its ends stand 3.05 m apart');
	expect(sentenceOf(short, sayIn({seats: []}, 'ft-in'))).toContain('stand 10′ 0″ apart');
});

test('`distinct` tells findings apart by code, facts and what they are about, not by kind or words', () => {
	const other: FindingOf<WiringFacts> = {...unrated, about: ['o2']};
	expect(distinct([unrated, {...unrated, kind: 'advice'}, other, short, short])).toHaveLength(3);
});

test('`saidJson` gives a finding its sentence and keeps everything else', () => {
	const result = {
		cables: [{kind: 'line', label: 'A'}],
		remarks: [unrated, open, {...short, about: ['a', 'b']}],
	};
	expect(JSON.parse(saidJson(result, say))).toEqual({
		cables: [{kind: 'line', label: 'A'}],
		remarks: [
			{kind: 'doubt', code: 'outlet-unrated', about: 'o1', text: sentenceOf(unrated, say), facts: {}},
			{kind: 'advice', code: 'lengths-unknown', text: sentenceOf(open, say), facts: {unknown: 2, of: 9}},
			expect.objectContaining({about: ['a', 'b'], text: expect.stringMatching(/^a and b: cut to 1\.20 m/)}),
		],
	});
});
