import {expect, test} from 'vitest';
import {withTodaysWords} from '../../../../source/profile/file/migrations/olderWords.ts';
import {parseProfile} from '../../../../source/profile/file/parse.ts';
import {sampleProfile} from '../../sample.ts';

const outlet = {id: 'a', name: 'A', kind: 'battery backup', volts: 230, limitVoltAmperes: 700, mine: 1};

test('an uninterruptible supply under its older word is read under today’s, all else kept', () => {
	const file = Object.freeze({wiring: {mine: 2, outlets: [outlet, {...outlet, id: 'b', kind: 'strip'}]}});
	expect(withTodaysWords(file)).toEqual({
		wiring: {
			mine: 2,
			outlets: [
				{...outlet, kind: 'ups'},
				{...outlet, id: 'b', kind: 'strip'},
			],
		},
	});
	expect(file.wiring.outlets[0]!.kind).toBe('battery backup');
});

test.each([
	[{}],
	[{wiring: null}],
	[{wiring: {outlets: 'none'}}],
	[{wiring: {outlets: [null, 3, {kind: 'constructor'}, {kind: 'wall'}]}}],
])('%j is left as it is', file => {
	expect(withTodaysWords(file)).toBe(file);
});

test('a whole file with the older word is sound and holds today’s', () => {
	const text = JSON.stringify({...sampleProfile(), wiring: {outlets: [outlet]}});
	const parsed = parseProfile(text, 'x');
	expect(parsed).toMatchObject({ok: true, profile: {wiring: {outlets: [{kind: 'ups', mine: 1}]}}});
});
