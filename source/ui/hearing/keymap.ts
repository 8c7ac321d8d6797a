import type {Binding} from '../keys/binding.ts';
import type {HearingStep} from './state.ts';

export type HearingCommand =
	| 'goOn'
	| 'back'
	| 'up'
	| 'down'
	| 'two'
	| 'all'
	| 'bass'
	| 'write'
	| 'erase'
	| 'eraseAll'
	| 'other'
	| 'seat'
	| 'changes'
	| 'leaveOut'
	| 'latency'
	| 'more'
	| 'walk';

const tables = ['playings', 'lines'] as const;
const letters = ['sheet', 'playings', 'lines'] as const;
const everywhere = ['sheet', 'arrive', 'playings', 'lines'] as const;

/** Keys of a recorded round; where a path can be typed letters are text. */
export const hearingKeymap: ReadonlyArray<Binding<HearingCommand, HearingStep>> = [
	{presses: ['enter'], command: 'goOn', modes: ['sheet'], shown: ['Enter', 'to the recordings']},
	{presses: ['enter'], command: 'goOn', modes: ['arrive'], shown: ['Enter', 'hear it']},
	{presses: ['enter'], command: 'goOn', modes: tables, shown: ['Enter', 'take what is sound']},
	{presses: ['1'], command: 'two', modes: ['sheet'], shown: ['1 2 3', 'size']},
	{presses: ['2'], command: 'all', modes: ['sheet']},
	{presses: ['3'], command: 'bass', modes: ['sheet']},
	{presses: ['w'], command: 'write', modes: ['sheet'], shown: ['w', 'write the file']},
	{presses: ['x', ' '], command: 'leaveOut', modes: ['playings'], shown: ['x', 'spare or not']},
	{presses: ['x', ' '], command: 'leaveOut', modes: ['lines'], shown: ['x', 'without it']},
	{presses: ['s'], command: 'seat', modes: ['playings'], shown: ['s', 'seat']},
	{presses: ['c'], command: 'changes', modes: ['playings'], shown: ['c', 'subs changed']},
	{presses: ['t'], command: 'latency', modes: ['lines'], shown: ['t', 'late: its latency']},
	{presses: ['tab'], command: 'other', modes: ['playings'], shown: ['Tab', 'lines']},
	{presses: ['tab'], command: 'other', modes: ['lines'], shown: ['Tab', 'playings']},
	{presses: ['tab'], command: 'other', modes: ['arrive'], shown: ['Tab', 'what was heard']},
	{presses: ['up'], command: 'up', modes: ['sheet'], shown: ['↑↓', 'scroll']},
	{presses: ['up'], command: 'up', modes: ['arrive', 'playings', 'lines'], shown: ['↑↓', 'row']},
	{presses: ['down'], command: 'down', modes: everywhere},
	{presses: ['pageDown', 'm'], command: 'more', modes: ['lines'], shown: ['m', 'all sentences']},
	{presses: ['erase'], command: 'erase', modes: ['arrive']},
	{presses: ['eraseAll'], command: 'eraseAll', modes: ['arrive']},
	{presses: ['escape'], command: 'back', modes: everywhere, shown: ['Esc', 'back']},
	{presses: ['q'], command: 'walk', modes: letters, shown: ['q', 'to the walk']},
];
