import {Trouble} from '../platform/trouble.ts';
import {type Command, exitCode, type Flag} from './command.ts';
import {type CompletionWords, completionScript} from './completionScript.ts';
import {flagText, globalFlags} from './flags.ts';

const shells = ['bash', 'zsh', 'fish'] as const;

/** The command, given how to load all commands: their flags are what the script is made of. */
export const completionOf = (loadAll: () => Promise<readonly Command[]>): Command => ({
	name: 'completion',
	summary: 'Print a completion script for your shell',
	takes: 'SHELL',
	examples: [
		['roomtare completion bash >> ~/.bashrc', 'for bash, from the next session on'],
		['roomtare completion zsh > ~/.zfunc/_roomtare', 'for zsh, with ~/.zfunc in fpath'],
		['roomtare completion fish > ~/.config/fish/completions/roomtare.fish', 'for fish'],
	],
	async run({input, flags, out}) {
		const shell = shells.find(name => name === input[0]);
		if (!shell) {
			throw new Trouble(
				`completion: “${input[0]}” is not a shell known here. Expected one of ${shells.join(', ')}.`,
			);
		}

		const words = (await loadAll()).map(command => wordsOf(command));
		out(flags.json ? JSON.stringify(words, null, 2) : completionScript(shell, words));
		return exitCode.fine;
	},
});

function wordsOf({name, summary, takes, flags}: Command): CompletionWords {
	const all: Readonly<Record<string, Flag>> = {...flags, ...globalFlags};
	return {
		name,
		summary,
		takesFiles: takes !== '' && name !== 'completion',
		options: Object.entries(all).map(([key, flag]) => ({
			text: flagText(key),
			help: flag.help,
			takesValue: flag.type !== 'boolean',
			choices: flag.choices ?? [],
		})),
	};
}
