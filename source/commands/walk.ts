import {findProfile} from '../platform/profiles/find.ts';
import {Trouble} from '../platform/trouble.ts';
import {appFiles} from './appFiles.ts';
import {appRecordings} from './appRecordings.ts';
import {appSearches} from './appSearches.ts';
import {type Command, exitCode} from './command.ts';
import {folderOf, profileFolders, profileFrom} from './profileArgument.ts';

export const command: Command = {
	name: 'walk',
	summary: 'Walk the round at the seat, question by question',
	takes: '[PROFILE]',
	flags: {
		recordings: {
			type: 'string',
			value: 'DIR',
			help: 'Folder where recordings of a round arrive; Downloads where not given',
		},
	},
	examples: [
		['roomtare walk', 'opens the app; go on with a profile or begin one'],
		['roomtare walk cellar-2026', 'goes on where this round stopped'],
	],
	async run(context) {
		const [word] = context.input;
		if (!context.isTerminal) {
			throw new Trouble(
				`walk asks its questions in a terminal, and there is none. Without one: roomtare new --help begins a profile, roomtare solve ${word ?? 'PROFILE'} prints its settings.`,
			);
		}

		if (word === '-')
			throw new Trouble('walk writes to the profile, and standard input cannot be written. Name a file.');
		const folder = folderOf(context);
		// A shipped profile is never changed: the walk goes on in a copy of it.
		const found = word === undefined ? undefined : findProfile(word, profileFolders(context));
		// Faults of the file are told before the screen changes.
		if (found !== undefined) await profileFrom(context, found);
		const files = appFiles(folder, context.now);
		const isShipped = files.list().some(({file, isShipped}) => isShipped && file === found);
		const {openApp} = await import('../ui/start.tsx');
		const copied = isShipped ? files.copy(found!) : undefined;
		if (copied && !copied.ok) throw new Trouble(copied.text);
		const file = copied?.ok ? copied.file : found;
		const {code, said} = await openApp({
			files,
			recordings: appRecordings(context.flags.recordings as string | undefined),
			searches: appSearches(),
			now: context.now,
			...(file !== undefined && {file}),
		});
		for (const line of said) context.say(line);
		return code === 0 ? exitCode.fine : exitCode.interrupted;
	},
};
