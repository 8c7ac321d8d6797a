import {type Command, exitCode} from './command.ts';

/** Runs when no command is named. */
export const command: Command = {
	name: '',
	summary: 'Open the app',
	takes: '',
	examples: [['roomtare', 'opens the app']],
	async run() {
		return exitCode.fine;
	},
};
