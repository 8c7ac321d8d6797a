import {isSameRoom} from '../../profile/ask/room.ts';
import type {Binding} from '../keys/binding.ts';
import {commandOf} from '../keys/binding.ts';
import type {Press} from '../keys/press.ts';
import {startRound} from '../walk/state.ts';
import {dayOf} from './day.ts';
import {draftRound} from './draft.ts';
import {openHistory} from './history.ts';
import {bringBack, pressRename, takeOut} from './homeFiles.ts';
import {openWalk} from './openWalk.ts';
import {openPlanning} from './planning.ts';
import type {AppScreen, HomeScreen, World} from './screen.ts';

export {openHome} from './openHome.ts';

type HomeCommand =
	| 'up'
	| 'down'
	| 'first'
	| 'last'
	| 'open'
	| 'new'
	| 'from'
	| 'compare'
	| 'history'
	| 'plan'
	| 'rename'
	| 'remove'
	| 'help'
	| 'unmark'
	| 'leave';

/** Keys of the home screen. */
export const homeKeymap: ReadonlyArray<Binding<HomeCommand, 'home'>> = [
	{presses: ['up', 'k'], command: 'up', modes: ['home'], shown: ['↑↓', 'choose']},
	{presses: ['down', 'j'], command: 'down', modes: ['home']},
	{presses: ['home', 'pageUp'], command: 'first', modes: ['home']},
	{presses: ['end', 'pageDown'], command: 'last', modes: ['home']},
	{presses: ['enter'], command: 'open', modes: ['home'], shown: ['Enter', 'open']},
	{presses: ['n'], command: 'new', modes: ['home'], shown: ['n', 'new']},
	{presses: ['p'], command: 'plan', modes: ['home'], shown: ['p', 'plan']},
	{presses: ['f'], command: 'from', modes: ['home'], shown: ['f', 'start from']},
	{presses: ['c'], command: 'compare', modes: ['home'], shown: ['c', 'compare']},
	{presses: ['h'], command: 'history', modes: ['home'], shown: ['h', 'history']},
	{presses: ['?'], command: 'help', modes: ['home'], shown: ['?', 'help']},
	{presses: ['q'], command: 'leave', modes: ['home'], shown: ['q', 'leave']},
	{presses: ['r'], command: 'rename', modes: ['home'], shown: ['r', 'rename']},
	{presses: ['d'], command: 'remove', modes: ['home'], shown: ['d', 'delete']},
	{presses: ['escape', 'u'], command: 'unmark', modes: ['home'], shown: ['u', 'undo']},
];

/** One key on the home screen. */
export function pressHome(screen: HomeScreen, press: Press, world: World): AppScreen {
	if (screen.renaming !== undefined) return pressRename(screen, press, world);
	if (press.key === 'characters') {
		const isHeld = /^(.)\1*$/u.test(press.text);
		return isHeld ? pressHome(screen, {key: 'character', text: press.text[0]!}, world) : screen;
	}

	const command = commandOf(homeKeymap, 'home', press);
	const calm: HomeScreen = {...screen, notes: [], removed: undefined};
	const entry = screen.entries[screen.cursor];
	switch (command) {
		case 'up':
			return {...calm, cursor: Math.max(0, screen.cursor - 1)};
		case 'down':
			return {...calm, cursor: Math.min(screen.entries.length, screen.cursor + 1)};
		case 'first':
			return {...calm, cursor: 0};
		case 'last':
			return {...calm, cursor: screen.entries.length};
		case 'open':
			return entry ? open(calm, entry.file, entry.isShipped, world) : startNew(world);
		case 'new':
			return startNew(world);
		case 'from':
			return entry
				? startFromEntry(calm, entry.file, world)
				: noted(calm, 'Choose the profile to start from first.');
		case 'compare':
			return entry ? compare(calm, entry.file, world) : noted(calm, 'Choose a profile to compare first.');
		case 'help':
			return {...calm, isHelpShown: !screen.isHelpShown};
		case 'unmark':
			return screen.removed !== undefined && press.key === 'character'
				? bringBack(screen.removed, world)
				: {...calm, marked: undefined, isHelpShown: false};
		case 'history':
			return entry ? openHistory(entry.file, world) : noted(calm, 'Choose a profile of the room first.');
		case 'plan':
			return entry ? openPlanning(world, entry.file, entry.isShipped) : startPlan(world);
		case 'rename':
			return entry && !entry.isShipped && entry.problem === undefined
				? {...calm, renaming: ''}
				: noted(calm, 'Choose a profile of your own to rename first.');
		case 'remove':
			return entry && !entry.isShipped
				? takeOut(calm, entry, world)
				: noted(calm, 'Choose a profile of your own to delete first; demos stay.');
		case 'leave':
			return {kind: 'left'};
		default:
			return screen;
	}
}

function noted(screen: HomeScreen, text: string): HomeScreen {
	return {...screen, notes: [{kind: 'note', text}]};
}

function refuse(screen: HomeScreen, text: string): HomeScreen {
	return {...screen, notes: [{kind: 'no', text}]};
}

function startNew({now}: World): AppScreen {
	return {kind: 'create', state: startRound(draftRound, {date: dayOf(now())}, undefined)};
}

/** Four answers, and the first picture. */
function startPlan({now}: World): AppScreen {
	return {kind: 'create', state: startRound(draftRound, {date: dayOf(now()), plan: {}}, undefined)};
}

function startFromEntry(screen: HomeScreen, file: string, {files, now}: World): AppScreen {
	const loaded = files.load(file);
	if (!loaded.ok) return refuse(screen, loaded.text);
	return {
		kind: 'create',
		state: startRound(draftRound, {date: dayOf(now()), from: loaded.profile}, undefined),
	};
}

/** Profiles that come with the program are never changed: a copy of them is walked. */
function open(screen: HomeScreen, file: string, isShipped: boolean, world: World): AppScreen {
	if (!isShipped) return openWalk(world, file) ?? refuse(screen, whyUnreadable(world, file));
	const copied = world.files.copy(file);
	if (!copied.ok) return refuse(screen, copied.text);
	return openWalk(world, copied.file) ?? refuse(screen, whyUnreadable(world, copied.file));
}

function whyUnreadable({files}: World, file: string): string {
	const loaded = files.load(file);
	return loaded.ok ? '' : loaded.text;
}

/** The next profile of the same room in the list, from the top again after the last; undefined where there is none. */
function nextOfRoom({entries, cursor}: HomeScreen, file: string, {files}: World): number | undefined {
	const chosen = files.load(file);
	if (!chosen.ok) return undefined;
	const isOfRoom = (index: number) => {
		const {file: other, problem} = entries[index]!;
		const loaded = problem === undefined ? files.load(other) : undefined;
		return loaded?.ok === true && isSameRoom(loaded.profile, chosen.profile);
	};
	const turned = entries.map((_, step) => (cursor + step) % entries.length).slice(1);
	// A copy of the same day differs in nothing, as a rule.
	const isOtherDay = (index: number) => entries[index]!.date !== entries[cursor]!.date;
	return turned.find(index => isOtherDay(index) && isOfRoom(index)) ?? turned.find(isOfRoom);
}

function compare(screen: HomeScreen, file: string, world: World): AppScreen {
	const {files} = world;
	if (!screen.marked) {
		const next = nextOfRoom(screen, file, world);
		const text =
			next === undefined
				? 'Now choose the other one and press c again. Esc drops the mark.'
				: `c again compares it with ${screen.entries[next]!.name}, of the same room; ↑↓ choose another. Esc drops the mark.`;
		return {...noted(screen, text), marked: file, cursor: next ?? screen.cursor};
	}

	if (screen.marked === file) return noted({...screen, marked: undefined}, 'The mark is gone.');
	const one = files.load(screen.marked);
	const other = files.load(file);
	if (!one.ok) return refuse(screen, one.text);
	if (!other.ok) return refuse(screen, other.text);
	const [older, newer] = [one.profile, other.profile].toSorted((a, b) => a.date.localeCompare(b.date));
	return {kind: 'compare', older: older!, newer: newer!, from: 0};
}
