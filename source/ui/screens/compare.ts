import {compareLines} from '../compare/compareLines.ts';
import {planLines} from '../compare/planLines.ts';
import type {Binding} from '../keys/binding.ts';
import {commandOf} from '../keys/binding.ts';
import type {Press} from '../keys/press.ts';
import {nextOlder} from './compareOlder.ts';
import {openHome} from './home.ts';
import type {AppScreen, CompareScreen, World} from './screen.ts';

type CompareCommand = 'up' | 'down' | 'pageUp' | 'pageDown' | 'first' | 'full' | 'plan' | 'older' | 'leave';
/** `fromWalk`: with a way back to the walk, and other older profiles to choose. */
type CompareMode = 'compare' | 'fromWalk';

const both = ['compare', 'fromWalk'] as const;

/** Shows every change. */
export const fullKey = 'a';

/** Keys of the comparison. */
export const compareKeymap: ReadonlyArray<Binding<CompareCommand, CompareMode>> = [
	{presses: ['up', 'k'], command: 'up', modes: both, shown: ['↑↓', 'scroll']},
	{presses: ['down', 'j', 'enter'], command: 'down', modes: both},
	{presses: ['pageUp'], command: 'pageUp', modes: both},
	{presses: ['pageDown', ' '], command: 'pageDown', modes: both, shown: ['Space', 'page']},
	{presses: ['home'], command: 'first', modes: both},
	{presses: [fullKey], command: 'full', modes: both, shown: [fullKey, 'all changes']},
	{presses: ['p'], command: 'plan', modes: both, shown: ['p', 'plans']},
	{presses: ['o'], command: 'older', modes: ['fromWalk'], shown: ['o', 'another']},
	{presses: ['q', 'escape', 'left'], command: 'leave', modes: both, shown: ['q', 'back']},
];

export const compareMode = ({back}: CompareScreen): CompareMode => (back ? 'fromWalk' : 'compare');

/** Lines that a page key moves. */
const pageLines = 12;

/** One key in the comparison of two profiles. The view keeps the window within the text. */
export function pressCompare(screen: CompareScreen, press: Press, world: World): AppScreen {
	const to = (from: number): AppScreen => ({...screen, from: Math.max(0, from)});
	switch (commandOf(compareKeymap, compareMode(screen), press)) {
		case 'up':
			return to(screen.from - 1);
		case 'down':
			return to(Math.min(screen.from + 1, lastLine(screen)));
		case 'pageUp':
			return to(screen.from - pageLines);
		case 'pageDown':
			return to(Math.min(screen.from + pageLines, lastLine(screen)));
		case 'first':
			return to(0);
		case 'full':
			return {
				...screen,
				isFull: screen.isPlanShown ? screen.isFull : !screen.isFull,
				from: 0,
				isPlanShown: false,
			};
		case 'plan':
			return {...screen, isPlanShown: !screen.isPlanShown, from: 0};
		case 'older':
			return nextOlder(screen, world) ?? screen;
		case 'leave':
			return screen.isPlanShown ? {...screen, isPlanShown: false, from: 0} : (screen.back ?? openHome(world));
		default:
			return screen;
	}
}

/** Where scrolling ends: about the last line of a narrow terminal, so that the way back is never long. */
function lastLine({older, newer, isFull = false, isPlanShown}: CompareScreen): number {
	if (isPlanShown) return planLines(older, newer, {columns: 60, rows: 24, isInWords: false}).length;
	return compareLines(older, newer, {columns: 80, isFull, fullKey}).length;
}
