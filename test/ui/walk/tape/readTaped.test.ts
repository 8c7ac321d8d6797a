import {expect, test} from 'vitest';
import {readTaped} from '../../../../source/ui/walk/tape/readTaped.ts';

test('nothing is no length', () => {
	for (const text of ['0', '0m', "0'"]) expect(readTaped(text, 'ft-in').kind, text).toBe('no');
});

test('5.11 in feet and inches is asked about: eleven inches, or parts of a foot', () => {
	const asked = readTaped('5.11', 'ft-in');
	if (asked.kind !== 'ask') throw new Error(`It was ${asked.kind}.`);
	// 5 ft 11 in is 1.8034 m and 5.11 ft is 1.5575 m by the international foot of 0.3048 m.
	expect(asked.choices.map(({metres}) => Number(metres.toFixed(4)))).toEqual([1.8034, 1.5575]);
});

test('other decimals, and the same in other units, are read as they stand', () => {
	expect(readTaped('5.5', 'ft-in')).toMatchObject({kind: 'ok'});
	expect(readTaped('5.11', 'm')).toMatchObject({kind: 'ok', metres: 5.11});
	expect(readTaped('5-11', 'ft-in')).toMatchObject({kind: 'ok'});
});
