import {expect, test} from 'vitest';
import * as z from 'zod';
import {profileSchema} from '../../../source/profile/schema/profile.ts';

type Node = {
	readonly description?: string;
	readonly $ref?: string;
	readonly properties?: Readonly<Record<string, Node>>;
	readonly items?: Node;
	readonly additionalProperties?: Node | boolean;
	readonly anyOf?: readonly Node[];
	readonly oneOf?: readonly Node[];
};

/** Paths of everything that has a name of its own and no sentence about it. */
function undescribed(node: Node | boolean | undefined, path = ''): string[] {
	if (typeof node !== 'object') return [];
	const named = Object.entries(node.properties ?? {}).flatMap(([name, inner]) => [
		...(inner.description === undefined && inner.$ref === undefined ? [`${path}/${name}`] : []),
		...undescribed(inner, `${path}/${name}`),
	]);
	return [
		...named,
		...undescribed(node.items, `${path}[]`),
		...undescribed(node.additionalProperties, `${path}{}`),
		...[...(node.anyOf ?? []), ...(node.oneOf ?? [])].flatMap(form => undescribed(form, path)),
	];
}

test('the JSON Schema says of every field what it is, so that a profile can be written by hand', () => {
	const schema = z.toJSONSchema(profileSchema, {io: 'input'}) as Node;
	expect(schema.description).toContain('reference');
	expect(Object.keys(schema.properties ?? {}).length).toBeGreaterThan(20);
	expect(undescribed(schema)).toEqual([]);
});
