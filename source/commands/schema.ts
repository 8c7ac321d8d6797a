import {profileJsonSchema} from '../profile/file/jsonSchema.ts';
import {type Command, exitCode} from './command.ts';

export const command: Command = {
	name: 'schema',
	summary: 'Print the JSON Schema of profile files',
	takes: '',
	examples: [['roomtare schema > profile.schema.json', 'writes the schema for an editor or another program']],
	async run({out}) {
		out(JSON.stringify(profileJsonSchema(), undefined, '\t'));
		return exitCode.fine;
	},
};
