import {listProfiles} from '../platform/profiles/list.ts';
import {shippedFolder} from '../platform/profiles/shipped.ts';
import {Trouble} from '../platform/trouble.ts';
import type {Command} from './command.ts';
import {folderOf, profileFrom} from './profileArgument.ts';
import {printSolution} from './solve.ts';
import {command as walk} from './walk.ts';

/** Runs when no command is named: the app, or without a terminal the settings of the newest profile. */
export const command: Command = {
	name: '',
	summary: 'Open the app',
	takes: '',
	examples: [['roomtare', 'opens the app']],
	async run(context) {
		if (context.isTerminal && !context.flags.json) return walk.run(context);
		const own = newestIn(folderOf(context));
		const path = own ?? newestIn(shippedFolder());
		if (path === undefined) {
			throw new Trouble(
				'There is no profile yet and no terminal to begin one in. roomtare new --help begins one.',
			);
		}

		context.say(
			own === undefined
				? 'No terminal and no profile of yours: these are the settings of the demo, an invented room. Run roomtare in a terminal to begin your own, or see roomtare --help.'
				: `No terminal: these are the settings of ${path}, your newest profile. Run roomtare in a terminal to go on, or see roomtare --help.`,
		);
		return printSolution(context, await profileFrom(context, path));
	},
};

function newestIn(folder: string | undefined): string | undefined {
	return folder === undefined
		? undefined
		: listProfiles(folder).find(({problem}) => problem === undefined)?.path;
}
