import type {Binding} from '../../keys/binding.ts';

/**
- `confirm`: the values are there, and wait to be decided.
- `stale`: a set was decided, and newer readings would change it.
- `one`: one item, large.
- `list`: all items, one line each.
*/
export type DialInMode = 'confirm' | 'stale' | 'one' | 'list';
export type DialInCommand = 'decide' | 'keepOld' | 'tick' | 'untick' | 'previous' | 'next' | 'list';

const both = ['one', 'list'] as const;

/** Keys of the stop for typing the settings in; what is not here goes to the walk. */
export const dialInKeymap: ReadonlyArray<Binding<DialInCommand, DialInMode>> = [
	{presses: ['enter'], command: 'decide', modes: ['confirm'], shown: ['Enter', 'decide']},
	{presses: ['enter'], command: 'decide', modes: ['stale'], shown: ['Enter', 'take the new ones']},
	{presses: ['o'], command: 'keepOld', modes: ['stale'], shown: ['o', 'stay with the old ones']},
	{presses: ['enter'], command: 'tick', modes: both, shown: ['Enter', 'done, next']},
	{presses: [' '], command: 'untick', modes: both, shown: ['Space', 'tick on or off']},
	{presses: ['up', 'left'], command: 'previous', modes: both, shown: ['↑↓', 'move']},
	{presses: ['down', 'right'], command: 'next', modes: both},
	{presses: ['l'], command: 'list', modes: both, shown: ['l', 'list or one']},
];
