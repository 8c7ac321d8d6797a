import type {Press} from './keys/press.ts';
import {lookForRecordings, tellHearing} from './screens/hearingOrders.ts';
import {openHome} from './screens/home.ts';
import {openWalk} from './screens/openWalk.ts';
import {hasWork, isSearchedElsewhere, tellPlanning, workOnPlanning} from './screens/planning.ts';
import {keep, pressAll, rescue} from './screens/press.ts';
import type {AppScreen, World} from './screens/screen.ts';

/** The state of the interface outside of React: keys change it at once, so that no burst of keys is lost. */
export type Session = {
	readonly screen: () => AppScreen;
	readonly subscribe: (onChange: () => void) => () => void;
	readonly press: (presses: readonly Press[]) => void;
	/** Puts on disk what is only in memory. */
	readonly keep: () => void;
	/** Looks whether a recording arrived. */
	readonly look: () => void;
	/** Ctrl-C, a signal or a fault: keeps everything, in the file or else beside it, and leaves. */
	readonly interrupt: () => void;
	readonly wasInterrupted: () => boolean;
	/** What is to be told once the screen is gone: where answers went that the file did not take. */
	readonly said: () => readonly string[];
};

/**
Starts at the walk of `file`, or at home.

@throws {Error} If `file` cannot be read; the message is what the reader of files said.
*/
export function startSession(given: World, file?: string): Session {
	let isSearching = false;
	const {searches} = given;
	// Keys that arrive together may begin a search and leave it before a screen shows it.
	const order: NonNullable<typeof searches>['order'] = asked => {
		isSearching = searches?.order(asked) ?? false;
		return isSearching;
	};
	// In the same way they may open a profile and leave it.
	const held = new Set<string>();
	const hold: typeof given.files.hold = (path, isForced) => {
		const answer = given.files.hold(path, isForced);
		if (answer.ok) held.add(path);
		return answer;
	};
	const world: World = {
		...given,
		files: {...given.files, hold},
		...(searches && {searches: {...searches, order}}),
	};
	let screen = file === undefined ? openHome(world) : openNamed(world, file);
	let isInterrupted = false;
	let said: readonly string[] = [];
	const listeners = new Set<() => void>();
	const set = (next: AppScreen) => {
		if (next === screen) return;
		for (const path of held) {
			if (path === fileOf(next)) continue;
			held.delete(path);
			world.files.release(path);
		}

		if (isHearing(screen) && !isHearing(next)) world.recordings?.stop();
		if (isSearching && !isSearchedElsewhere(next)) {
			isSearching = false;
			searches?.stop();
		}

		screen = next;
		for (const listener of listeners) listener();
		goOn();
	};
	let isWorking = false;
	/** Long work goes on in slices between keys. */
	const goOn = () => {
		if (isWorking || !hasWork(screen)) return;
		isWorking = true;
		setImmediate(() => {
			isWorking = false;
			if (hasWork(screen)) set(workOnPlanning(screen, world));
			goOn();
		});
	};

	world.recordings?.onNews(news => set(tellHearing(screen, news)));
	world.searches?.onNews(news => set(tellPlanning(screen, news)));

	return {
		screen: () => screen,
		subscribe(onChange) {
			listeners.add(onChange);
			return () => listeners.delete(onChange);
		},
		press: presses => set(pressAll(screen, presses, world)),
		keep: () => set(keep(screen, world)),
		look: () => {
			if (screen.kind === 'hearing') set(lookForRecordings(screen, world));
		},
		interrupt() {
			if (screen.kind === 'left') return;
			isInterrupted = true;
			said = rescue(screen, world);
			set({kind: 'left'});
		},
		wasInterrupted: () => isInterrupted,
		said: () => said,
	};
}

/** Whether recordings are being heard, or wait to be taken. */
function isHearing(screen: AppScreen): boolean {
	return screen.kind === 'hearing' || (screen.kind === 'walk' && screen.hearing !== undefined);
}

/** The file that a screen works on. */
function fileOf(screen: AppScreen): string | undefined {
	if (screen.kind === 'compare' || screen.kind === 'hearing') return screen.back?.file;
	return screen.kind === 'walk' || screen.kind === 'planning' ? screen.file : undefined;
}

function openNamed(world: World, file: string): AppScreen {
	const walk = openWalk(world, file);
	if (walk) return walk;
	const loaded = world.files.load(file);
	throw new Error(loaded.ok ? `${file} could not be opened.` : loaded.text);
}
