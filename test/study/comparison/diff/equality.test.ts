import fc from 'fast-check';
import {expect, test} from 'vitest';
import {differingFields, isSameValue} from '../../../../source/study/comparison/diff/equality.ts';

test('order of keys says nothing, order of a list does, and a missing key is one without a value', () => {
	expect(isSameValue({a: 1, b: [1, 2]}, {b: [1, 2], a: 1})).toBe(true);
	expect(isSameValue([1, 2], [2, 1])).toBe(false);
	expect(isSameValue({a: 1, b: undefined}, {a: 1})).toBe(true);
	expect(isSameValue({a: null}, {})).toBe(false);
	expect(isSameValue(0, -0)).toBe(true);
	expect(isSameValue({}, [])).toBe(false);
});

test('leaves that differ are told with their path, lists whole', () => {
	const before = {trim: {stepDb: 0.5, minimumDb: -12}, name: 'A', choices: [60, 80]};
	const after = {trim: {stepDb: 1, minimumDb: -12}, choices: [60, 90], kind: 'x'};
	expect(differingFields(before, after)).toEqual([
		{path: 'trim.stepDb', before: 0.5, after: 1},
		{path: 'name', before: 'A', after: undefined},
		{path: 'choices', before: [60, 80], after: [60, 90]},
		{path: 'kind', before: undefined, after: 'x'},
	]);
});

test('a value differs from no copy of itself, and differs exactly where fields are told', () => {
	fc.assert(
		fc.property(fc.jsonValue(), fc.jsonValue(), (a, b) => {
			expect(isSameValue(a, structuredClone(a))).toBe(true);
			expect(differingFields(a, b).length === 0).toBe(isSameValue(a, b));
		}),
	);
});
