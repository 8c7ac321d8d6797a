import fc from 'fast-check';
import {expect, test} from 'vitest';
import {parseProfile} from '../../../source/profile/file/parse.ts';
import {serialiseProfile} from '../../../source/profile/file/serialise.ts';
import {sampleProfile} from '../sample.ts';

test('serialiseProfile refuses what JSON cannot hold, and names the place', () => {
	const profile = sampleProfile();
	profile.tape![1]!.metres = Number.NaN;
	expect(() => serialiseProfile(profile)).toThrow('tape[1].metres cannot be stored');
});

test('serialiseProfile writes each reading on one line and ends with a line end', () => {
	const lines = serialiseProfile(sampleProfile()).split('\n');
	expect(lines).toContain('\t\t{"from": "sofa", "to": "FL", "metres": 2.8575},');
	expect(lines.filter(line => line.includes('"decibels"'))).toHaveLength(3);
	expect(lines.at(-1)).toBe('');
});

test('one more reading is one more line in a diff, and the comma before it', () => {
	const before = serialiseProfile(sampleProfile()).split('\n');
	const profile = sampleProfile();
	profile.tape!.push({from: 'sofa', to: 'sub1', metres: 3});
	const after = serialiseProfile(profile).split('\n');
	expect(after).toHaveLength(before.length + 1);
	expect(after.filter(line => !before.includes(line))).toHaveLength(2);
});

test('serialiseProfile puts known keys in one order, whatever the order in memory', () => {
	const profile = sampleProfile();
	const turned = Object.fromEntries(Object.entries(profile).toReversed()) as typeof profile;
	turned.tape = profile.tape!.map(
		reading => Object.fromEntries(Object.entries(reading).toReversed()) as typeof reading,
	);
	expect(serialiseProfile(turned)).toBe(serialiseProfile(profile));
});

test('unknown keys survive reading and writing at every level', () => {
	const profile = {...sampleProfile(), zebra: {list: [1, {deep: null}]}};
	Object.assign(profile.tape![0]!, {colour: 'red'});
	Object.assign(profile.receiver!.timing, {shelf: 3});
	const parsed = parseProfile(serialiseProfile(profile), 'file');
	expect(parsed).toMatchObject({ok: true, profile});
});

test('parse after serialise gives the same profile, and the same text again', () => {
	const extra = fc.dictionary(
		fc.string({minLength: 1}).filter(key => key !== '__proto__'),
		fc.jsonValue({maxDepth: 3, noUnicodeString: false}),
		{maxKeys: 4},
	);
	const length = fc.double({min: 0, max: 1000, noNaN: true}).map(value => value + 0);
	fc.assert(
		fc.property(
			extra,
			fc.array(length, {maxLength: 20}),
			fc.string({maxLength: 100}),
			(keys, lengths, note) => {
				const profile = {
					...keys,
					...sampleProfile(),
					note,
					tape: lengths.map(metres => ({from: 'FL', to: 'sofa', metres, extra: keys})),
				};
				const text = serialiseProfile(profile);
				const parsed = parseProfile(text, 'file');
				expect(parsed.ok).toBe(true);
				if (!parsed.ok) return;
				expect(parsed.profile).toEqual(JSON.parse(JSON.stringify(profile)));
				expect(serialiseProfile(parsed.profile)).toBe(text);
			},
		),
		{seed: 7, numRuns: 500},
	);
});
