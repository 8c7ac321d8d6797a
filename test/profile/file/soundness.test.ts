import {expect, test} from 'vitest';
import {generatedSchema} from '../../../source/profile/file/generatedSchema.ts';
import {profileJsonSchema} from '../../../source/profile/file/jsonSchema.ts';
import {isCertainlySound} from '../../../source/profile/file/soundness.ts';
import {sampleProfile} from '../sample.ts';

test('tests take the path that ships: the schema is written in as the build does it', () => {
	const bare = (key: string, value: unknown) =>
		key === 'description' && typeof value === 'string' ? undefined : value;
	expect(generatedSchema).toEqual(JSON.parse(JSON.stringify(profileJsonSchema(), bare)));
	expect(isCertainlySound(JSON.parse(JSON.stringify(sampleProfile())))).toBe(true);
	expect(isCertainlySound({...sampleProfile(), seats: []})).toBe(false);
});
