import {isSameRoom} from '../../profile/ask/room.ts';
import {readEntry} from '../../study/comparison/history/readEntry.ts';
import {roomHistory} from '../../study/comparison/history/roomHistory.ts';
import type {Binding} from '../keys/binding.ts';
import {commandOf} from '../keys/binding.ts';
import type {Press} from '../keys/press.ts';
import {lengthUnitOf} from '../walk/lengthUnits.ts';
import {openHome} from './openHome.ts';
import type {AppScreen, HistoryScreen, World} from './screen.ts';

type HistoryCommand = 'up' | 'down' | 'leave';

export const historyKeymap: ReadonlyArray<Binding<HistoryCommand, 'history'>> = [
	{presses: ['up', 'k'], command: 'up', modes: ['history'], shown: ['↑↓', 'scroll']},
	{presses: ['down', 'j'], command: 'down', modes: ['history']},
	{presses: ['q', 'escape', 'enter', 'h'], command: 'leave', modes: ['history'], shown: ['q', 'back']},
];

/** All profiles of the chosen one's room, oldest to newest; home with a word where it cannot be read. */
export function openHistory(file: string, world: World): AppScreen {
	const chosen = world.files.load(file);
	if (!chosen.ok) return openHome(world, [{kind: 'no', text: chosen.text}], file);
	const entries = world.files.list().flatMap(listed => {
		const loaded = listed.problem === undefined ? world.files.load(listed.file) : undefined;
		const isOfRoom = loaded?.ok && isSameRoom(loaded.profile, chosen.profile);
		const entry = isOfRoom ? readEntry(loaded.profile, listed.name) : undefined;
		return entry ? [entry] : [];
	});
	return {
		kind: 'history',
		history: roomHistory(entries),
		lengthUnit: lengthUnitOf(chosen.profile),
		file,
		from: 0,
	};
}

/** One key in the history of a room. */
export function pressHistory(screen: HistoryScreen, press: Press, world: World): AppScreen {
	const last = Math.max(0, screen.history.channels.length - 1);
	switch (commandOf(historyKeymap, 'history', press)) {
		case 'up':
			return {...screen, from: Math.max(0, screen.from - 1)};
		case 'down':
			return {...screen, from: Math.min(last, screen.from + 1)};
		case 'leave':
			return openHome(world, [], screen.file);
		default:
			return screen;
	}
}
