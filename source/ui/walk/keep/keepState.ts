import {sheetData} from '../../../calibration/sheet/sheetData.ts';
import type {Profile} from '../../../profile/types.ts';
import {assembleSheet} from '../../../report/sheet/assemble.ts';
import {sheetHtml} from '../../../report/sheet/html.ts';
import {planOf} from '../../../report/sheet/planOf.ts';
import {sheetText} from '../../../report/sheet/text.ts';
import {cableLabels, labelsHtml} from '../../../report/wiring/labels.ts';
import type {Written} from '../../files.ts';
import {type Binding, commandOf} from '../../keys/binding.ts';
import type {Press} from '../../keys/press.ts';
import type {PagePress} from '../page.ts';

/** What the stop shows: its summary, or the page for the cabinet door from a line on. */
export type KeepState = {
	readonly isSheetShown: boolean;
	readonly from: number;
	/** What was written, or why not. */
	readonly said: ReadonlyArray<{readonly isGood: boolean; readonly text: string}>;
};

export const keepStart: KeepState = {isSheetShown: false, from: 0, said: []};

type Command = 'show' | 'back' | 'write' | 'labels' | 'up' | 'down';
type Mode = 'summary' | 'sheet';

export const keepKeymap: ReadonlyArray<Binding<Command, Mode>> = [
	{presses: ['d'], command: 'show', modes: ['summary'], shown: ['d', 'door page']},
	{presses: ['d', 'escape'], command: 'back', modes: ['sheet'], shown: ['Esc', 'back']},
	{presses: ['up'], command: 'up', modes: ['sheet'], shown: ['↑↓', 'scroll']},
	{presses: ['down'], command: 'down', modes: ['sheet']},
	{presses: ['w'], command: 'write', modes: ['summary', 'sheet'], shown: ['w', 'write it to files']},
	{presses: ['c'], command: 'labels', modes: ['summary'], shown: ['c', 'cable labels']},
];

export const keepMode = ({isSheetShown}: KeepState): Mode => (isSheetShown ? 'sheet' : 'summary');

/** Width of the page written as plain text: what a printer in plain letters holds. */
const printedColumns = 96;

/** One key at the stop that keeps: the page for the cabinet door on the screen, or in files beside the profile. */
export function pressKeep(profile: Profile, state: KeepState, press: Press): PagePress<KeepState> {
	const to = (next: Partial<KeepState>): PagePress<KeepState> => ({
		kind: 'state',
		state: {...state, ...next},
	});
	switch (commandOf(keepKeymap, keepMode(state), press)) {
		case 'show':
			return to({isSheetShown: true, from: 0, said: []});
		case 'back':
			return to({isSheetShown: false, said: []});
		case 'up':
			return to({from: Math.max(0, state.from - 1)});
		case 'down':
			// Lines of the narrowest usual screen: the last of them can still be reached, and not far beyond.
			return to({from: Math.min(state.from + 1, sheetScreenLines(profile, 78).length - 1)});
		case 'write': {
			const data = sheetData(profile);
			const content = assembleSheet(data);
			return {
				kind: 'write',
				documents: [
					{ending: '-door.html', text: sheetHtml(content, planOf(data))},
					{ending: '-door.txt', text: sheetText(content, printedColumns)},
				],
				after: written => ({...state, said: outcome(written)}),
			};
		}

		case 'labels': {
			const {cables} = sheetData(profile).wiring;
			const title = `Cable labels: ${profile.name}`;
			return {
				kind: 'write',
				documents: [{ending: '-labels.html', text: labelsHtml(cableLabels(cables), title)}],
				after: written => ({...state, said: outcome(written)}),
			};
		}

		case undefined:
			return {kind: 'none'};
	}
}

function outcome(written: readonly Written[]): KeepState['said'] {
	return written.map(one =>
		one.ok ? {isGood: true, text: `Written: ${one.path}`} : {isGood: false, text: one.text},
	);
}

/** The page for the cabinet door as lines of the screen. */
export function sheetScreenLines(profile: Profile, columns: number): string[] {
	return sheetText(assembleSheet(sheetData(profile)), columns)
		.trimEnd()
		.split('\n');
}
