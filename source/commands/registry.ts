import type {Command} from './command.ts';

type Entry = {
	readonly name: string;
	/** The same line as the command's own; here so that the list of commands loads none of them. */
	readonly summary: string;
	readonly load: () => Promise<{readonly command: Command}>;
};

/**
Every command, in the order of the help. A command's file exports `command` and is loaded only when it is called.
To add one: write `commands/NAME.ts` and a line here; help, completion and tests follow from this list.
*/
export const registry: readonly Entry[] = [
	{
		name: 'completion',
		summary: 'Print a completion script for your shell',
		load: async () => ({command: (await import('./completion.ts')).completionOf(loadAll)}),
	},
];

async function loadAll(): Promise<readonly Command[]> {
	return Promise.all(registry.map(async ({load}) => (await load()).command));
}

/** What runs when no command is named: the app, or without a terminal the newest settings. */
export const home = (): Promise<{readonly command: Command}> => import('./home.ts');
