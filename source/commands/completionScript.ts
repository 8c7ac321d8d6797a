/** What a shell may complete after one command's name. */
export type CompletionWords = {
	readonly name: string;
	readonly summary: string;
	readonly takesFiles: boolean;
	readonly options: ReadonlyArray<{
		readonly text: string;
		readonly help: string;
		readonly takesValue: boolean;
		readonly choices: readonly string[];
	}>;
};

type Shell = 'bash' | 'zsh' | 'fish';

/** A script that teaches the shell the commands, their options and the choices of these. */
export function completionScript(shell: Shell, commands: readonly CompletionWords[]): string {
	return {bash, zsh, fish}[shell](commands);
}

function bash(commands: readonly CompletionWords[]): string {
	return `# Completion of roomtare for bash.
_roomtare() {
	local word=\${COMP_WORDS[COMP_CWORD]} before=\${COMP_WORDS[COMP_CWORD-1]} command=\${COMP_WORDS[1]}
	if [ "$COMP_CWORD" -eq 1 ]; then
		COMPREPLY=($(compgen -W ${quote(commands.map(({name}) => name).join(' '))} -- "$word"))
		return
	fi
	case "$command $before" in
${choiceCases(commands)}	esac
	case "$word" in
		-*)
			case "$command" in
${commands.map(({name, options}) => `				${name}) COMPREPLY=($(compgen -W ${quote(options.map(({text}) => text).join(' '))} -- "$word")) ;;\n`).join('')}			esac
			;;
		*) COMPREPLY=($(compgen -f -- "$word")) ;;
	esac
}
complete -o filenames -F _roomtare roomtare
`;
}

function choiceCases(commands: readonly CompletionWords[]): string {
	return commands
		.flatMap(({name, options}) =>
			options
				.filter(({choices}) => choices.length > 0)
				.map(
					({text, choices}) =>
						`		${quote(`${name} ${text}`)}) COMPREPLY=($(compgen -W ${quote(choices.join(' '))} -- "$word")); return ;;\n`,
				),
		)
		.join('');
}

function zsh(commands: readonly CompletionWords[]): string {
	const listed = commands.map(({name, summary}) => `		${quote(`${name}:${summary}`)}`).join('\n');
	const cases = commands.map(({name, takesFiles, options}) => {
		const specs = options.map(({text, help, takesValue, choices}) => {
			const action = choices.length > 0 ? `(${choices.join(' ')})` : '_files';
			return quote(`${text}[${help.replace(/[[\]:]/g, ' ')}]${takesValue ? `:value:${action}` : ''}`);
		});
		if (takesFiles) specs.push(quote('*:file:_files'));
		return `		${name}) _arguments ${specs.join(' ')} ;;`;
	});
	return `#compdef roomtare
# Completion of roomtare for zsh.
_roomtare() {
	local -a commands
	commands=(
${listed}
	)
	if (( CURRENT == 2 )); then
		_describe command commands
		return
	fi
	local command=$words[2]
	shift words
	(( CURRENT-- ))
	case $command in
${cases.join('\n')}
	esac
}
if [ "$funcstack[1]" = _roomtare ]; then _roomtare; else compdef _roomtare roomtare; fi
`;
}

function fish(commands: readonly CompletionWords[]): string {
	const lines = ['# Completion of roomtare for fish.'];
	for (const {name, summary, takesFiles, options} of commands) {
		lines.push(
			`complete -c roomtare -n __fish_use_subcommand -f -a ${name} -d ${quote(summary)}`,
			...options.map(({text, help, takesValue, choices}) => {
				const value = choices.length > 0 ? ` -x -a ${quote(choices.join(' '))}` : takesValue ? ' -r' : '';
				return `complete -c roomtare -n '__fish_seen_subcommand_from ${name}' -l ${text.slice(2)}${value} -d ${quote(help)}`;
			}),
		);
		if (takesFiles) lines.push(`complete -c roomtare -n '__fish_seen_subcommand_from ${name}' -F`);
	}

	return `${lines.join('\n')}\n`;
}

function quote(text: string): string {
	return `'${text.replaceAll("'", String.raw`'\''`)}'`;
}
