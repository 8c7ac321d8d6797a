import {expect, test} from 'vitest';
import type {DialItem} from '../../../../source/ui/walk/dialIn/items.ts';
import {dialInList} from '../../../../source/ui/walk/dialIn/listLines.ts';

const item = (title: string, values: readonly string[]): DialItem => ({
	id: title,
	title,
	box: 'receiver',
	values: values.map(value => ({
		label: 'Trim',
		value,
		isChanged: true,
		tick: `${title}.trim`,
		isDone: false,
	})),
	isChanged: true,
	isDone: false,
});
const items = ['a', 'b', 'c', 'd'].map((title, index) => item(title, [`${10 ** index} dB`]));

test('listLines of nothing is empty', () => {
	expect(dialInList([], undefined, 80, 5)).toEqual([]);
	expect(dialInList(items, 0, 80, 0)).toEqual([]);
});

test('listLines sets values under each other, right-aligned', () => {
	const ends = dialInList(items, undefined, 80, 9).map(({text}) => text.length);
	expect(new Set(ends).size).toBe(1);
});

test('listLines shows every item in some window', () => {
	for (const [at, {title}] of items.entries()) {
		const lines = dialInList(items, at, 80, 3);
		expect(lines).toHaveLength(3);
		expect(lines.some(({text}) => text.startsWith(`› · ${title}`))).toBe(true);
	}
});
