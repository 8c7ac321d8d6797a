import fc from 'fast-check';
import {expect, test, vi} from 'vitest';
import type {Profile} from '../../source/profile/types.ts';
import {derived} from '../../source/ui/derived.ts';
import {den} from './rooms.ts';

const tapes = (metres: readonly number[]): NonNullable<Profile['tape']> =>
	metres.map(value => ({from: 'FL', to: 'seat', metres: value}));

test('derived computes again only when a declared input changed', () => {
	const sum = vi.fn(({tape = []}: Pick<Profile, 'tape'>) =>
		tape.reduce((total, {metres}) => total + metres, 0),
	);
	const sumOf = derived({tape: profile => profile.tape}, sum);
	const room = den({tape: tapes([1, 2])});
	expect(sumOf(room)).toBe(3);
	expect(sumOf({...room, note: 'the walk went on'})).toBe(3);
	expect(sum).toHaveBeenCalledTimes(1);
	expect(sumOf({...room, tape: [...room.tape!, ...tapes([4])]})).toBe(7);
	expect(sum).toHaveBeenCalledTimes(2);
});

test('derived takes lists of the same entries for the same, so that a filter costs nothing', () => {
	const count = vi.fn(({long}: {long: readonly unknown[]}) => long.length);
	const countOf = derived({long: ({tape = []}) => tape.filter(({metres}) => metres > 2)}, count);
	const room = den({tape: tapes([1, 3])});
	expect(countOf(room)).toBe(1);
	expect(countOf({...room, tape: [...room.tape!, ...tapes([0.5])]})).toBe(1);
	expect(count).toHaveBeenCalledTimes(1);
	expect(countOf({...room, tape: [...room.tape!, ...tapes([5])]})).toBe(2);
});

test('derived recomputes nothing on undo and redo, and forgets what is older than three', () => {
	const compute = vi.fn(({tape = []}: Pick<Profile, 'tape'>) => tape.length);
	const lengthOf = derived({tape: profile => profile.tape}, compute);
	const rounds = [1, 2, 3, 4].map(length => den({tape: tapes(Array(length).fill(1))}));
	for (const round of rounds) lengthOf(round);
	expect(compute).toHaveBeenCalledTimes(4);
	expect([rounds[2]!, rounds[3]!, rounds[1]!].map(lengthOf)).toEqual([3, 4, 2]);
	expect(compute).toHaveBeenCalledTimes(4);
	lengthOf(rounds[0]!);
	expect(compute).toHaveBeenCalledTimes(5);
});

test('derived takes what is derived itself as an input', () => {
	const meanOf = derived({tape: profile => profile.tape}, ({tape = []}) =>
		Math.round(tape.reduce((total, {metres}) => total + metres, 0) / tape.length),
	);
	const above = vi.fn(({mean, name}: {mean: number; name: string}) => `${name}: ${mean}`);
	const textOf = derived({mean: meanOf, name: profile => profile.name}, above);
	expect(textOf(den({tape: tapes([1, 3])}))).toBe('Den: 2');
	// Another reading, the same mean: what stands on it stays.
	expect(textOf(den({tape: tapes([1, 3, 2])}))).toBe('Den: 2');
	expect(above).toHaveBeenCalledTimes(1);
});

test('derived passes on what compute throws and tries anew', () => {
	let isBroken = true;
	const once = derived({tape: profile => profile.tape}, () => {
		if (isBroken) throw new RangeError('too few readings');
		return 'fine';
	});
	const room = den();
	expect(() => once(room)).toThrow('too few readings');
	isBroken = false;
	expect(once(room)).toBe('fine');
});

test('derived does not let compute read an input that was not declared', () => {
	const nameOf = derived(
		{tape: profile => profile.tape},
		// @ts-expect-error: `meter` is not declared. The type checker is the test; the value only shows what would happen.
		({meter}) => meter,
	);
	expect(nameOf(den())).toBeUndefined();
});

test('derived always gives what compute gives', () => {
	const plain = (profile: Profile) => (profile.tape ?? []).map(({metres}) => metres).join();
	const textOf = derived({tape: profile => profile.tape}, ({tape = []}) =>
		tape.map(({metres}) => metres).join(),
	);
	fc.assert(
		fc.property(fc.array(fc.array(fc.integer({min: 1, max: 3}), {maxLength: 3}), {maxLength: 30}), rounds => {
			for (const metres of rounds) {
				const room = den({tape: tapes(metres)});
				expect(textOf(room)).toBe(plain(room));
			}
		}),
	);
});
