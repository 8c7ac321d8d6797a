import * as z from 'zod';
import {profileSchema} from '../schema/profile.ts';

/**
JSON Schema of profile files, draft 2020-12, generated from the schema that every read goes through. Rules that span
several fields are not in it.
*/
export function profileJsonSchema(): Record<string, unknown> {
	return {title: 'roomtare profile', ...z.toJSONSchema(profileSchema)};
}
