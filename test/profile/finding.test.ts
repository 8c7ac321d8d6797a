import {expect, expectTypeOf, test} from 'vitest';
import {type FindingOf, finding, hasProblem, mostSeriousFirst} from '../../source/profile/finding.ts';

type Facts = {late: {readonly ms: number}; absent: {readonly seat: string}};

test('a finding fits its topic only with the facts of its code', () => {
	expectTypeOf(finding('doubt', 'late', ['FL'], {ms: 3})).toExtend<FindingOf<Facts>>();
	expectTypeOf(finding('doubt', 'late', ['FL'], {seat: 'middle'})).not.toExtend<FindingOf<Facts>>();
	expectTypeOf(finding('doubt', 'unheard-of', [], {ms: 3})).not.toExtend<FindingOf<Facts>>();
});

test('`mostSeriousFirst` keeps the order of what is alike', () => {
	const found = (['note', 'doubt', 'advice', 'problem', 'doubt'] as const).map((kind, at) => ({kind, at}));
	expect(mostSeriousFirst(found).map(({at}) => at)).toEqual([3, 1, 4, 2, 0]);
	expect(mostSeriousFirst([])).toEqual([]);
});

test('`hasProblem` is not stirred by a doubt', () => {
	expect(hasProblem([])).toBe(false);
	expect(hasProblem([{kind: 'doubt'}])).toBe(false);
	expect(hasProblem([{kind: 'note'}, {kind: 'problem'}])).toBe(true);
});
