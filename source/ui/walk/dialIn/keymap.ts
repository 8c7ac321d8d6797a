import type {Binding} from '../../keys/binding.ts';

/**
- `confirm`: the values are there, and wait to be decided.
- `stale`: a set was decided, and newer readings would change it.
- `pages`: as the boxes show it, page by page.
- `one`: one item, large.
- `why`: how the value under the cursor came about.
*/
export type DialInMode = 'confirm' | 'stale' | 'pages' | 'one' | 'why';
export type DialInCommand =
	| 'decide'
	| 'keepOld'
	| 'tickPage'
	| 'tickRow'
	| 'tick'
	| 'untick'
	| 'previous'
	| 'next'
	| 'previousPage'
	| 'nextPage'
	| 'view'
	| 'why'
	| 'back';

const both = ['pages', 'one'] as const;

/** Keys of the stop for typing the settings in; what is not here goes to the walk. */
export const dialInKeymap: ReadonlyArray<Binding<DialInCommand, DialInMode>> = [
	{presses: ['enter'], command: 'decide', modes: ['confirm'], shown: ['Enter', 'decide']},
	{presses: ['enter'], command: 'decide', modes: ['stale'], shown: ['Enter', 'take the new ones']},
	{presses: ['o'], command: 'keepOld', modes: ['stale'], shown: ['o', 'stay with the old ones']},
	{presses: ['enter'], command: 'tickPage', modes: ['pages'], shown: ['Enter', 'page done']},
	{presses: [' '], command: 'tickRow', modes: ['pages'], shown: ['Space', 'row']},
	{presses: ['enter'], command: 'tick', modes: ['one'], shown: ['Enter', 'done, next']},
	{presses: [' '], command: 'untick', modes: ['one'], shown: ['Space', 'tick on or off']},
	{presses: ['w'], command: 'why', modes: ['pages', 'one'], shown: ['w', 'why']},
	{presses: ['up'], command: 'previous', modes: both, shown: ['↑↓', 'move']},
	{presses: ['down'], command: 'next', modes: both},
	{presses: ['left'], command: 'previousPage', modes: ['pages'], shown: ['←→', 'pages']},
	{presses: ['right'], command: 'nextPage', modes: ['pages']},
	{presses: ['left'], command: 'previous', modes: ['one']},
	{presses: ['right'], command: 'next', modes: ['one']},
	{presses: ['l'], command: 'view', modes: ['pages'], shown: ['l', 'channel by channel']},
	{presses: ['l'], command: 'view', modes: ['one'], shown: ['l', 'page by page']},
	{presses: ['w', 'escape', 'enter'], command: 'back', modes: ['why'], shown: ['Esc', 'back']},
	{presses: ['up'], command: 'previous', modes: ['why'], shown: ['↑↓', 'move']},
	{presses: ['down'], command: 'next', modes: ['why']},
];
