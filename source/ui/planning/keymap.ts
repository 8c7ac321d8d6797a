import type {Binding} from '../keys/binding.ts';

export type PlanCommand =
	| 'up'
	| 'down'
	| 'left'
	| 'right'
	| 'choose'
	| 'keep'
	| 'finer'
	| 'wider'
	| 'move'
	| 'search'
	| 'notHere'
	| 'room'
	| 'curve'
	| 'moves'
	| 'order'
	| 'why'
	| 'print'
	| 'undo'
	| 'help'
	| 'back';
export type PlanMode = 'rows' | 'moving';

/** Keys of planning: the ladder, and a thing that is being moved. */
export const planKeymap: ReadonlyArray<Binding<PlanCommand, PlanMode>> = [
	{presses: ['up'], command: 'up', modes: ['rows', 'moving']},
	{presses: ['down'], command: 'down', modes: ['rows', 'moving']},
	{presses: ['left'], command: 'left', modes: ['moving']},
	{presses: ['right'], command: 'right', modes: ['moving']},
	{presses: ['enter'], command: 'choose', modes: ['rows'], shown: ['Enter', 'choose']},
	{presses: ['enter'], command: 'keep', modes: ['moving']},
	{presses: ['-'], command: 'finer', modes: ['moving']},
	{presses: ['+', '='], command: 'wider', modes: ['moving']},
	{presses: ['s'], command: 'search', modes: ['rows'], shown: ['s', 'search']},
	{presses: ['m'], command: 'move', modes: ['rows', 'moving'], shown: ['m', 'move']},
	{presses: ['n'], command: 'notHere', modes: ['rows'], shown: ['n', 'not here']},
	{presses: ['r'], command: 'room', modes: ['rows'], shown: ['r', 'room']},
	{presses: ['v'], command: 'curve', modes: ['rows', 'moving'], shown: ['v', 'curve']},
	{presses: ['l'], command: 'moves', modes: ['rows'], shown: ['l', 'list']},
	{presses: ['o'], command: 'order', modes: ['rows']},
	{presses: ['w'], command: 'why', modes: ['rows'], shown: ['w', 'why']},
	{presses: ['?'], command: 'help', modes: ['rows', 'moving'], shown: ['?', 'help']},
	{presses: ['q', 'escape'], command: 'back', modes: ['rows', 'moving'], shown: ['q', 'back']},
	{presses: ['p'], command: 'print', modes: ['rows']},
	{presses: ['u'], command: 'undo', modes: ['rows']},
];
/** What the footer says while a thing is moved. */
export const movingKeys: ReadonlyArray<readonly [key: string, does: string]> = [
	['← → ↑ ↓', 'move it'],
	['+ −', 'step'],
	['Enter', 'keep as a variant'],
	['v', 'curve'],
	['m', 'another thing'],
	['Esc', 'leave it'],
];
