import {expect, test} from 'vitest';
import {migrations} from '../../../../source/profile/file/migrations/index.ts';
import {type Migration, migrate} from '../../../../source/profile/file/migrations/migrate.ts';
import {currentFormat} from '../../../../source/profile/format.ts';

// An artificial chain: centimetres became metres in 2, `title` became `name` in 3.
const chain: readonly Migration[] = [
	{from: 2, to: 3, apply: ({title, ...rest}) => ({...rest, name: title})},
	{from: 1, to: 2, apply: ({widthCm, ...rest}) => ({...rest, widthMetres: Number(widthCm) / 100})},
];

test.each([[undefined], ['1'], [1.5], [-1], [null]])('migrate refuses the format %j', format => {
	expect(migrate({format}, chain, 3)).toMatchObject({ok: false, found: {path: ['format'], value: format}});
});

test('migrate leaves a current file as it is', () => {
	const file = {format: 3, name: 'x'};
	expect(migrate(file, chain, 3)).toEqual({ok: true, file, from: 3});
});

test('migrate runs all steps in order, keeps unknown keys and leaves the old file alone', () => {
	const file = Object.freeze({format: 1, title: 'x', widthCm: 400, mine: true});
	expect(migrate(file, chain, 3)).toEqual({
		ok: true,
		from: 1,
		file: {format: 3, name: 'x', widthMetres: 4, mine: true},
	});
	expect(file).toEqual({format: 1, title: 'x', widthCm: 400, mine: true});
});

test('migrate names both formats of a newer file', () => {
	expect(migrate({format: 4}, chain, 3)).toMatchObject({
		ok: false,
		found: {remedy: expect.stringMatching(/format 4.*format 3/)},
	});
});

test('migrate says so where a step is missing', () => {
	expect(migrate({format: 1}, chain.slice(0, 1), 3)).toMatchObject({
		ok: false,
		found: {remedy: 'Nothing leads from format 1 to format 3.'},
	});
});

test('the real steps lead from every older format to the current one', () => {
	expect(migrations.map(({from}) => from).toSorted()).toEqual(
		Array.from({length: currentFormat - 1}, (_, index) => index + 1),
	);
});
