import {newProfilePath} from '../platform/profiles/newPath.ts';
import {createProfileFile} from '../platform/profiles/save.ts';
import {startFrom} from '../profile/startFrom.ts';
import {type Command, exitCode} from './command.ts';
import {dateFlag, dateOf} from './dateFlag.ts';
import {folderOf, readProfileArgument} from './profileArgument.ts';

export const command: Command = {
	name: 'copy',
	summary: 'Start a new round from an older profile',
	takes: 'PROFILE NAME',
	flags: {
		date: dateFlag,
		readings: {
			type: 'string',
			value: 'WHICH',
			choices: ['keep', 'drop'],
			default: 'drop',
			help: 'Whether readings come along; room, speakers, kit and the last settings always do',
		},
	},
	examples: [
		['roomtare copy cellar-2026 "Next year"', 'keeps room, speakers and kit, and the old settings as found'],
		['roomtare copy cellar-2026 "Trial" --readings keep', 'copies everything, to try something out'],
	],
	async run(context) {
		const [source, name] = context.input as readonly [string, string];
		const {profile: old} = await readProfileArgument(context, source);
		const readings = context.flags.readings === 'keep' ? 'keep' : 'drop';
		const profile = startFrom(old, {name, date: dateOf(context), readings});
		const path = newProfilePath(folderOf(context), name);
		createProfileFile(path, profile);
		if (context.flags.json) context.out(JSON.stringify({path, profile}, undefined, '\t'));
		else context.out(path);
		const found = profile.settings?.length ? ' The settings decided last count as in force.' : '';
		context.say(
			`“${name}” starts from “${old.name}” ${readings === 'keep' ? 'with' : 'without'} its readings.${readings === 'drop' ? found : ''}`,
		);
		return exitCode.fine;
	},
};
