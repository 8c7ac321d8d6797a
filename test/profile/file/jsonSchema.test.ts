import {Ajv2020} from 'ajv/dist/2020.js';
import {expect, test} from 'vitest';
import {profileJsonSchema} from '../../../source/profile/file/jsonSchema.ts';
import {sampleProfile} from '../sample.ts';

// An independent validator of draft 2020-12. Formats are annotations there, so the date format is given as a plain pattern.
const ajv = new Ajv2020({
	allErrors: true,
	strict: true,
	strictTuples: false,
	allowUnionTypes: true,
	formats: {date: /^\d{4}-\d\d-\d\d$/, 'date-time': true},
});
const validate = ajv.compile(profileJsonSchema());

test('the JSON Schema takes the sample, with unknown keys', () => {
	validate({...sampleProfile(), mine: 1});
	expect(validate.errors ?? []).toEqual([]);
});

test.each([
	['no name', {name: undefined}],
	['another format', {format: 2}],
	['a broken date', {date: 'yesterday'}],
	['no seats', {seats: []}],
	['an unknown channel', {channels: [{id: 'XX'}]}],
	['a negative length', {tape: [{from: 'a', to: 'b', metres: -1}]}],
	['an unknown ceiling', {room: {name: 'x', ceiling: {kind: 'round'}}}],
])('the JSON Schema refuses %s', (_, change) => {
	expect(validate(JSON.parse(JSON.stringify({...sampleProfile(), ...change})))).toBe(false);
});
