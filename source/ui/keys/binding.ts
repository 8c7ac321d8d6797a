import type {Press} from './press.ts';

/** One line of a keymap: the same data finds the command of a key and writes the footer. */
export type Binding<Command extends string, Mode extends string> = {
	/** Named keys, or single characters. */
	readonly presses: readonly string[];
	readonly command: Command;
	readonly modes: readonly Mode[];
	/** The key as the footer names it, and what it does; without it the footer leaves the key out. */
	readonly shown?: readonly [key: string, does: string];
};

/** The command that a key gives in a mode; undefined where it is text or nothing. */
export function commandOf<Command extends string, Mode extends string>(
	bindings: ReadonlyArray<Binding<Command, Mode>>,
	mode: Mode,
	press: Press,
): Command | undefined {
	const name = press.key === 'character' ? press.text : press.key;
	return bindings.find(({presses, modes}) => modes.includes(mode) && presses.includes(name))?.command;
}

/** What the footer shows in a mode, most useful first as the keymap lists them. */
export function footerOf<Command extends string, Mode extends string>(
	bindings: ReadonlyArray<Binding<Command, Mode>>,
	mode: Mode,
): ReadonlyArray<readonly [key: string, does: string]> {
	return bindings.flatMap(({modes, shown}) => (shown && modes.includes(mode) ? [shown] : []));
}
