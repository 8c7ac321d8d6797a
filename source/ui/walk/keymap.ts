import type {Binding} from '../keys/binding.ts';
import type {Prompt} from './prompt/prompt.ts';
import type {RoundState} from './state.ts';

/**
- `waiting`: a question for figures with nothing typed yet: letters are commands.
- `typing`: figures are being typed.
- `naming`: a question for text: letters are text, Esc comes before a command.
- `armed`: after that Esc.
- `asked`: a question back, answered by a number.
- `page`: a screen of its own.
*/
export type Mode = 'waiting' | 'typing' | 'naming' | 'armed' | 'asked' | 'page';

export type Command =
	| 'take'
	| 'erase'
	| 'eraseAll'
	| 'previous'
	| 'next'
	| 'previousStop'
	| 'nextStop'
	| 'again'
	| 'correct'
	| 'skip'
	| 'setAside'
	| 'undo'
	| 'help'
	| 'table'
	| 'plan'
	| 'arm'
	| 'leave'
	| 'leaveTyped';

const letters = ['waiting', 'armed', 'page'] as const;

/** Keys of the walk; the footer shows them in this order as far as they fit. */
export const walkKeymap: ReadonlyArray<Binding<Command, Mode>> = [
	{
		presses: ['enter'],
		command: 'take',
		modes: ['typing', 'naming', 'asked'],
		shown: ['Enter', 'take'],
	},
	{presses: ['enter'], command: 'take', modes: ['page'], shown: ['Enter', 'go on']},
	{presses: ['enter'], command: 'take', modes: ['waiting'], shown: ['Enter', 'next']},
	{presses: ['escape'], command: 'eraseAll', modes: ['typing'], shown: ['Esc', 'clear']},
	{presses: ['escape'], command: 'eraseAll', modes: ['asked'], shown: ['Esc', 'drop it']},
	{presses: ['escape'], command: 'arm', modes: ['naming'], shown: ['Esc', 'then a command']},
	{presses: ['escape'], command: 'arm', modes: ['armed'], shown: ['Esc', 'back to text']},
	{presses: ['escape'], command: 'eraseAll', modes: ['waiting']},
	{
		presses: ['up'],
		command: 'previous',
		modes: ['waiting', 'typing', 'naming', 'armed', 'page'],
		shown: ['↑↓', 'move'],
	},
	{presses: ['down'], command: 'next', modes: ['waiting', 'typing', 'naming', 'armed', 'page']},
	{presses: ['u'], command: 'undo', modes: letters, shown: ['u', 'undo']},
	{presses: ['u'], command: 'undo', modes: ['typing', 'asked']},
	{presses: ['?'], command: 'help', modes: ['waiting', 'armed', 'page', 'typing'], shown: ['?', 'help']},
	{presses: ['q'], command: 'leave', modes: letters, shown: ['q', 'leave']},
	{presses: ['e'], command: 'correct', modes: ['waiting', 'armed'], shown: ['e', 'correct']},
	{presses: ['s'], command: 'skip', modes: ['waiting', 'armed'], shown: ['s', 'skip']},
	{presses: ['r'], command: 'again', modes: ['waiting', 'armed'], shown: ['r', 'repeat']},
	{presses: ['q'], command: 'leave', modes: ['asked']},
	{presses: ['q'], command: 'leaveTyped', modes: ['typing']},
	{
		presses: ['tab'],
		command: 'table',
		modes: ['waiting', 'typing', 'naming', 'armed', 'page'],
		shown: ['Tab', 'table'],
	},
	{presses: ['p'], command: 'plan', modes: ['waiting', 'armed', 'page'], shown: ['p', 'plan']},
	{
		presses: ['pageUp', '['],
		command: 'previousStop',
		modes: ['waiting', 'armed', 'page'],
		shown: ['[ ]', 'stops'],
	},
	{presses: ['pageDown', ']'], command: 'nextStop', modes: ['waiting', 'armed', 'page']},
	{presses: ['pageUp'], command: 'previousStop', modes: ['naming']},
	{presses: ['pageDown'], command: 'nextStop', modes: ['naming']},
	{presses: ['x'], command: 'setAside', modes: ['waiting', 'armed'], shown: ['x', 'set aside']},
	{presses: ['erase'], command: 'erase', modes: ['typing', 'naming', 'asked']},
	{presses: ['eraseAll'], command: 'eraseAll', modes: ['typing', 'naming', 'asked']},
];

/** The mode that decides what a key means. */
export function modeOf<Subject>(prompt: Prompt<Subject>, state: RoundState<Subject>): Mode {
	if (state.asked) return 'asked';
	if (prompt.kind === 'page') return 'page';
	if (state.isArmed) return 'armed';
	if (prompt.kind === 'text') return 'naming';
	return state.typed === '' ? 'waiting' : 'typing';
}
