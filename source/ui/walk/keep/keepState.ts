import {listed} from '../../../profile/names.ts';
import type {Profile} from '../../../profile/types.ts';
import {assembleSheet} from '../../../report/sheet/assemble.ts';
import {sheetCurves} from '../../../report/sheet/curveOf.ts';
import {sheetHtml} from '../../../report/sheet/html.ts';
import {sheetMarkdown} from '../../../report/sheet/markdown.ts';
import {svgPlanOf} from '../../../report/sheet/planOf.ts';
import {sheetText} from '../../../report/sheet/text.ts';
import {cableLabels, labelsHtml, labelsText} from '../../../report/wiring/labels.ts';
import {sheetData} from '../../../study/comparison/sheetData.ts';
import type {Written} from '../../files.ts';
import {type Binding, commandOf} from '../../keys/binding.ts';
import type {Press} from '../../keys/press.ts';
import type {PagePress, PageWorld, WalkFacts} from '../page.ts';
import {sayFor} from '../sayFor.ts';
import {tapedNetworkOf} from '../sceneOf.ts';
import {solutionOf} from '../solution.ts';
import {keepLines} from './lines.ts';
import {nextOf} from './next.ts';
import {responseCount} from './response.tsx';

/** What the stop shows: its summary, or the page for the cabinet door from a line on. */
export type KeepState = {
	readonly isSheetShown: boolean;
	readonly from: number;
	/** Which recorded response is shown; none where not given. */
	readonly responseAt?: number;
	/** What was written, or why not. */
	readonly said: ReadonlyArray<{readonly isGood: boolean; readonly text: string}>;
};

export const keepStart: KeepState = {isSheetShown: false, from: 0, said: []};

type KeepCommand =
	| 'show'
	| 'back'
	| 'goOn'
	| 'write'
	| 'markdown'
	| 'labels'
	| 'compare'
	| 'response'
	| 'nextLine'
	| 'up'
	| 'down';
type KeepMode = 'summary' | 'sheet' | 'response';

const both = ['summary', 'sheet'] as const;

export const keepKeymap: ReadonlyArray<Binding<KeepCommand, KeepMode>> = [
	{presses: ['d'], command: 'show', modes: ['summary'], shown: ['d', 'door page']},
	{presses: ['d', 'escape'], command: 'back', modes: ['sheet'], shown: ['Esc', 'back']},
	{presses: ['r', 'escape'], command: 'back', modes: ['response'], shown: ['Esc', 'back']},
	{presses: ['n'], command: 'nextLine', modes: ['response'], shown: ['n', 'next line']},
	{presses: ['up'], command: 'up', modes: both, shown: ['↑↓', 'scroll']},
	{presses: ['down'], command: 'down', modes: both},
	{presses: ['w'], command: 'write', modes: both, shown: ['w', 'write it']},
	{presses: ['m'], command: 'markdown', modes: ['sheet'], shown: ['m', 'as Markdown']},
	{presses: ['l'], command: 'labels', modes: both, shown: ['l', 'cable labels']},
	{presses: ['r'], command: 'response', modes: ['summary'], shown: ['r', 'response']},
	{presses: ['c'], command: 'compare', modes: ['summary'], shown: ['c', 'compare']},
	{presses: ['enter'], command: 'goOn', modes: ['summary'], shown: ['Enter', 'go on']},
];

export const keepMode = ({isSheetShown, responseAt}: KeepState): KeepMode =>
	responseAt === undefined ? (isSheetShown ? 'sheet' : 'summary') : 'response';

/** Width of the page written as plain text: what a printer in plain letters holds. */
const printedColumns = 96;

/** Lines that the lowest usual screen shows of a page. */
const leastShown = 12;

/** One key at the stop that keeps: the page for the cabinet door on the screen, or in files beside the profile. */
export function pressKeep(
	profile: Profile,
	state: KeepState,
	press: Press,
	{walk}: Pick<PageWorld, 'walk'>,
): PagePress<KeepState> {
	const to = (next: Partial<KeepState>): PagePress<KeepState> => ({
		kind: 'state',
		state: {...state, ...next},
	});
	switch (commandOf(keepKeymap, keepMode(state), press)) {
		case 'show':
			return to({isSheetShown: true, from: 0, said: []});
		case 'back':
			return to({isSheetShown: false, from: 0, responseAt: undefined, said: []});
		case 'response':
			if (responseCount(profile) === 0)
				return to({said: [{isGood: false, text: 'No response was recorded yet. Bass records a round.'}]});
			return to({responseAt: 0, from: 0, said: []});
		case 'nextLine':
			return to({responseAt: ((state.responseAt ?? 0) + 1) % Math.max(1, responseCount(profile))});
		case 'goOn': {
			const {promptId} = nextOf(profile, walk.status);
			return promptId === undefined ? {kind: 'none'} : {kind: 'go', promptId};
		}

		case 'compare':
			return {
				kind: 'compare',
				withoutOlder: {...state, said: [{isGood: false, text: 'There is no older profile to compare with.'}]},
			};
		case 'up':
			if (state.from === 0) return state.isSheetShown ? to({}) : {kind: 'none'};
			return to({from: state.from - 1});
		case 'down':
			if (state.from < lastLine(profile, state, walk)) return to({from: state.from + 1});
			return state.isSheetShown ? to({}) : {kind: 'none'};
		case 'write': {
			const data = pageOf(profile);
			const content = assembleSheet(data);
			return {
				kind: 'write',
				documents: [
					{ending: '-door.html', text: sheetHtml(content, svgPlanOf(data), sheetCurves(data))},
					{ending: '-door.txt', text: sheetText(content, printedColumns)},
				],
				after: written => ({...state, said: outcome(written)}),
			};
		}

		case 'markdown':
			return {
				kind: 'write',
				documents: [{ending: '-door.md', text: sheetMarkdown(assembleSheet(pageOf(profile)))}],
				after: written => ({...state, said: outcome(written)}),
			};
		case 'labels': {
			const labels = cableLabels(pageOf(profile).wiring.cables, sayFor(profile));
			const title = `Cable labels: ${profile.name}`;
			return {
				kind: 'write',
				documents: [
					{ending: '-labels.html', text: labelsHtml(labels, title)},
					{ending: '-labels.txt', text: labelsText(labels, printedColumns)},
				],
				after: written => ({...state, said: outcome(written)}),
			};
		}

		case undefined:
			return {kind: 'none'};
	}
}

/** Where scrolling ends: the lines of the narrowest usual screen, less what it shows at once. */
function lastLine(profile: Profile, {isSheetShown}: KeepState, walk: WalkFacts): number {
	const lines = isSheetShown ? sheetScreenLines(profile, 78) : keepLines(profile, 80, walk);
	return Math.max(0, lines.length - leastShown);
}

function outcome(written: readonly Written[]): KeepState['said'] {
	const paths = written.flatMap(one => (one.ok ? [one.path] : []));
	const refused = written.flatMap(one => (one.ok ? [] : [{isGood: false, text: one.text}]));
	if (paths.length === 0) return refused;
	const nameAt = (path: string) => Math.max(path.lastIndexOf('/'), path.lastIndexOf('\\')) + 1;
	const names = paths.map(path => path.slice(nameAt(path)));
	// The names first: a long folder may be cut at the window's edge.
	const folder = paths[0]!.slice(0, nameAt(paths[0]!));
	return [{isGood: true, text: `Written: ${listed(names)}, in ${folder}`}, ...refused];
}

/** What goes on the page for the cabinet door. */
function pageOf(profile: Profile) {
	return sheetData(profile, {network: tapedNetworkOf(profile), solution: solutionOf(profile)});
}

/** The page for the cabinet door as lines of the screen. */
export function sheetScreenLines(profile: Profile, columns: number): string[] {
	return sheetText(assembleSheet(pageOf(profile)), columns)
		.trimEnd()
		.split('\n');
}
