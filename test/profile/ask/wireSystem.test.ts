import {expect, test} from 'vitest';
import {wireSystemOf} from '../../../source/profile/ask/wireSystem.ts';
import type {Profile} from '../../../source/profile/types.ts';

const connections = (...marks: object[]) =>
	({connections: marks}) as unknown as NonNullable<Profile['wiring']>;

test('the kit has the first word, a cable’s mark the next, the tape the last', () => {
	const wiring = connections({}, {awg: 14}, {areaSquareMillimetres: 2.5});
	expect(wireSystemOf({kit: {wireSystem: 'metric', tapeShownIn: 'ft-in'}, wiring})).toBe('metric');
	expect(wireSystemOf({kit: {tapeShownIn: 'm'}, wiring})).toBe('awg');
	expect(wireSystemOf({kit: {tapeShownIn: 'ft-in'}, wiring: connections({areaSquareMillimetres: 4})})).toBe(
		'metric',
	);
	expect(wireSystemOf({kit: {tapeShownIn: 'ft'}})).toBe('awg');
	expect(wireSystemOf({kit: {tapeShownIn: 'cm'}})).toBe('metric');
	expect(wireSystemOf({})).toBe('metric');
});
