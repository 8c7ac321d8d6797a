import type {Key} from 'ink';

/** One key as the interface sees it: a named key, or a character. */
export type Press =
	| {readonly key: NamedKey}
	| {readonly key: 'character'; readonly text: string}
	/** Several characters at once: pasted, or typed faster than they were read. */
	| {readonly key: 'characters'; readonly text: string};

export type NamedKey =
	| 'enter'
	| 'escape'
	| 'up'
	| 'down'
	| 'left'
	| 'right'
	| 'pageUp'
	| 'pageDown'
	| 'home'
	| 'end'
	| 'tab'
	| 'erase'
	| 'eraseAll'
	| 'interrupt'
	| 'suspend';

/** Longest text that a prompt takes. Longer pastes are cut. */
export const longestTyped = 120;
/** More lines than this in one paste are not readings any more. */
const mostLines = 64;

const named: ReadonlyArray<readonly [flag: keyof Key, name: NamedKey]> = [
	['return', 'enter'],
	['upArrow', 'up'],
	['downArrow', 'down'],
	['leftArrow', 'left'],
	['rightArrow', 'right'],
	['pageUp', 'pageUp'],
	['pageDown', 'pageDown'],
	['home', 'home'],
	['end', 'end'],
	['tab', 'tab'],
	['backspace', 'erase'],
	['delete', 'erase'],
];

/**
Key presses of one event of the terminal, in order.

An event may hold a whole paste, with line ends in it and with the markers of bracketed paste around it: lines
become texts with Enter between them, control characters and markers go. An Escape followed at once by a letter
arrives as one event with `meta` and becomes two presses.
*/
export function pressesOf(input: string, key: Partial<Key>): Press[] {
	if (key.ctrl) {
		if (input === 'c' || input === '\\') return [{key: 'interrupt'}];
		if (input === 'z') return [{key: 'suspend'}];
		if (input === 'u') return [{key: 'eraseAll'}];
		if (input === 'h') return [{key: 'erase'}];
		if (input === 'j' || input === 'm') return [{key: 'enter'}];
		return [];
	}

	// Ctrl-\, which Ink hands on as it comes.
	if (input === '\u001c') return [{key: 'interrupt'}];
	for (const [flag, name] of named) if (key[flag]) return [{key: name}];
	if (key.escape) return [{key: 'escape'}];
	const typed = pressesOfText(input);
	return key.meta && typed.length > 0 ? [{key: 'escape'}, ...typed] : typed;
}

function pressesOfText(input: string): Press[] {
	const lines = input
		.replace(/\u001b?\[20[01]~/g, '')
		// Clicks that a terminal still reports for a program that ended before this one.
		.replace(/\u001b?\[<\d+;\d+;\d+[Mm]/g, '')
		.split(/\r\n|\r|\n/)
		.slice(0, mostLines)
		.map(line => line.replace(/\t/g, ' ').replace(/[\u0000-\u001f\u007f-\u009f]/g, ''));
	return lines.flatMap((line, index): Press[] => {
		const characters = [...line].slice(0, longestTyped);
		const text = characters.join('');
		const press: Press[] =
			characters.length === 0
				? []
				: characters.length === 1
					? [{key: 'character', text}]
					: [{key: 'characters', text}];
		return index === lines.length - 1 ? press : [...press, {key: 'enter'}];
	});
}
