import {expect, test} from 'vitest';
import {swappedDigits} from '../../../source/study/survey/swappedDigits.ts';

test('swappedDigits finds nothing in a length of equal digits', () => {
	expect(swappedDigits(2.22, 'm')).toEqual([]);
});

test('swappedDigits swaps neighbours, over the decimal point too', () => {
	expect(swappedDigits(2.85, 'm').map(({text}) => text)).toEqual(['8.25 m', '2.58 m']);
	expect(swappedDigits(2.85, 'cm').map(({text}) => text)).toEqual(['825 cm', '258 cm']);
});

test('swappedDigits swaps feet with inches, and the inches of ten and more', () => {
	const texts = swappedDigits((4 * 12 + 9) * 0.0254, 'ft-in').map(({text}) => text);
	expect(texts).toContain('9′ 4″');
	expect(swappedDigits((12 * 12 + 10) * 0.0254, 'ft-in').map(({text}) => text)).toEqual([
		'21′ 10″',
		'12′ 1″',
	]);
});
