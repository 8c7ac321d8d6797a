import {type Binding, footerOf} from '../keys/binding.ts';
import {isDrawerId} from './places.ts';
import type {Prompt} from './prompt/prompt.ts';
import type {RoundState} from './state.ts';

/**
- `waiting`: a question for figures with nothing typed yet: letters are commands.
- `typing`: figures are being typed.
- `naming`: a question for text: letters are text, Esc comes before a command.
- `armed`: after that Esc.
- `asked`: a question back, answered by a number.
- `page`: a screen of its own.
- `table`: the table in the place of the question; digits are dead.
- `jump`: a name to go to is being typed.
*/
export type Mode = 'waiting' | 'typing' | 'naming' | 'armed' | 'asked' | 'page' | 'table' | 'jump';

export type WalkCommand =
	| 'take'
	| 'erase'
	| 'eraseAll'
	| 'back'
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
	| 'rowUp'
	| 'rowDown'
	| 'goToRow'
	| 'plan'
	| 'jump'
	| 'jumpUp'
	| 'jumpDown'
	| 'jumpGo'
	| 'jumpErase'
	| 'jumpLeave'
	| 'kit'
	| 'wiring'
	| 'arm'
	| 'leave'
	| 'leaveTyped';

const asking = ['waiting', 'armed'] as const;
const letters = ['waiting', 'armed', 'page'] as const;
const anywhere = ['waiting', 'armed', 'page', 'table'] as const;
const moving = ['waiting', 'typing', 'naming', 'armed', 'page'] as const;

/** Keys of the walk; the footer shows them in this order as far as they fit, the help shows all. */
export const walkKeymap: ReadonlyArray<Binding<WalkCommand, Mode>> = [
	{presses: ['enter'], command: 'take', modes: ['typing', 'naming', 'asked'], shown: ['Enter', 'take']},
	{presses: ['enter'], command: 'take', modes: ['page'], shown: ['Enter', 'go on']},
	{presses: ['enter'], command: 'take', modes: asking, shown: ['Enter', 'next']},
	{presses: ['enter'], command: 'goToRow', modes: ['table'], shown: ['Enter', 'its question']},
	{presses: ['enter'], command: 'jumpGo', modes: ['jump'], shown: ['Enter', 'go there']},
	{presses: ['escape'], command: 'eraseAll', modes: ['typing'], shown: ['Esc', 'clear']},
	{presses: ['escape'], command: 'eraseAll', modes: ['asked'], shown: ['Esc', 'drop it']},
	{presses: ['escape'], command: 'arm', modes: ['naming'], shown: ['Esc', 'then a command']},
	{presses: ['escape'], command: 'arm', modes: ['armed'], shown: ['Esc', 'back to text']},
	{presses: ['escape', 'tab', 'q'], command: 'table', modes: ['table'], shown: ['Esc', 'back']},
	{presses: ['escape'], command: 'jumpLeave', modes: ['jump'], shown: ['Esc', 'back']},
	{presses: ['escape'], command: 'back', modes: ['waiting', 'page'], shown: ['Esc', 'back']},
	{presses: ['up'], command: 'rowUp', modes: ['table'], shown: ['↑↓', 'row']},
	{presses: ['down'], command: 'rowDown', modes: ['table']},
	{presses: ['up'], command: 'jumpUp', modes: ['jump'], shown: ['↑↓', 'choose']},
	{presses: ['down'], command: 'jumpDown', modes: ['jump']},
	{
		presses: ['?'],
		command: 'help',
		modes: ['waiting', 'armed', 'page', 'typing', 'table'],
		shown: ['?', 'help'],
	},
	{presses: ['up'], command: 'previous', modes: moving, shown: ['↑↓', 'move']},
	{presses: ['down'], command: 'next', modes: moving},
	{presses: ['e'], command: 'correct', modes: asking, shown: ['e', 'correct']},
	{presses: ['x'], command: 'setAside', modes: asking, shown: ['x', 'set aside']},
	{presses: ['s'], command: 'skip', modes: asking, shown: ['s', 'later']},
	{presses: ['u'], command: 'undo', modes: letters, shown: ['u', 'undo']},
	{presses: ['u'], command: 'undo', modes: ['typing', 'asked']},
	{presses: ['q'], command: 'leave', modes: letters, shown: ['q', 'leave']},
	{presses: ['q'], command: 'leave', modes: ['asked']},
	{presses: ['q'], command: 'leaveTyped', modes: ['typing']},
	{presses: ['pageUp', '['], command: 'previousStop', modes: anywhere, shown: ['[ ]', 'stops']},
	{presses: ['pageDown', ']'], command: 'nextStop', modes: anywhere},
	{presses: ['tab'], command: 'table', modes: moving, shown: ['Tab', 'table']},
	{presses: ['p'], command: 'plan', modes: anywhere, shown: ['p', 'plan']},
	{presses: ['j'], command: 'jump', modes: anywhere, shown: ['j', 'jump']},
	{presses: ['r'], command: 'again', modes: asking, shown: ['r', 'last again']},
	{presses: ['K'], command: 'kit', modes: anywhere, shown: ['K', 'kit']},
	{presses: ['W'], command: 'wiring', modes: anywhere, shown: ['W', 'wiring']},
	{presses: ['pageUp'], command: 'previousStop', modes: ['naming'], shown: ['PgUp PgDn', 'stops']},
	{presses: ['pageDown'], command: 'nextStop', modes: ['naming']},
	{presses: ['erase'], command: 'jumpErase', modes: ['jump']},
	{presses: ['erase'], command: 'erase', modes: ['typing', 'naming', 'asked']},
	{presses: ['eraseAll'], command: 'eraseAll', modes: ['typing', 'naming', 'asked']},
];

/** The mode that decides what a key means. */
export function modeOf<Subject>(prompt: Prompt<Subject>, state: RoundState<Subject>): Mode {
	if (state.jump) return 'jump';
	if (state.table) return 'table';
	if (state.asked) return 'asked';
	if (prompt.kind === 'page') return 'page';
	if (state.isArmed) return 'armed';
	if (prompt.kind === 'text') return 'naming';
	return state.typed === '' ? 'waiting' : 'typing';
}

/** The keys that do something as the round stands, with what they do, most useful first. */
export function walkKeys<Subject>(
	prompt: Prompt<Subject>,
	state: RoundState<Subject>,
): ReadonlyArray<readonly [key: string, does: string]> {
	const {asked, doubted} = state;
	const isUsual = prompt.usual !== undefined || prompt.usualText !== undefined;
	const isRefused = state.typed === '' && prompt.isRequired && !prompt.isAnswered && !isUsual;
	const isFit: Partial<Record<WalkCommand, boolean>> = {
		back: isDrawerId(prompt.stop),
		take: asked !== undefined || prompt.kind === 'page' || !isRefused,
		correct: prompt.values.length > 0,
		setAside: prompt.setAside !== undefined && prompt.values.length > 0,
		skip: !prompt.isAnswered,
		undo: state.past.length > 0 || state.correcting !== undefined,
		again: state.latest !== undefined && state.latest !== prompt.id,
	};
	const fitting = walkKeymap.filter(({command}) => isFit[command] !== false);
	const keys = footerOf(fitting, modeOf(prompt, state));
	const several = asked !== undefined && asked.choices.length > 1;
	return keys.map(([key, does]) => {
		if (key !== 'Enter') return [key, does] as const;
		if (several) return ['number, Enter', 'choose'] as const;
		return [key, doubted === undefined ? does : 'take it all the same'] as const;
	});
}
