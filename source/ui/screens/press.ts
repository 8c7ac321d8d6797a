import type {Press} from '../keys/press.ts';
import {pressCompare} from './compare.ts';
import {pressCreate} from './create.ts';
import {pressHearing} from './hearing.ts';
import {pressHistory} from './history.ts';
import {pressHome} from './home.ts';
import {pressPlanning} from './planning.ts';
import {keepQuietly, rescueWalk} from './save.ts';
import type {AppScreen, World} from './screen.ts';
import {pressWalk} from './walk.ts';

/**
Keys of one event of the terminal, one after the other. Where a line of a paste was refused or asked back, the lines
after it are dropped, so that they answer no question that they were not meant for.
*/
export function pressAll(screen: AppScreen, presses: readonly Press[], world: World): AppScreen {
	let now = screen;
	const isPaste = presses.length > 2 && presses.some(({key}) => key === 'enter');
	for (const press of presses) {
		now = pressOne(now, press, world);
		if (isPaste && isHalted(now)) break;
	}

	return now;
}

function isHalted(screen: AppScreen): boolean {
	if (screen.kind === 'walk' && screen.trouble) return true;
	if (screen.kind === 'planning') return screen.plan.notes.some(({kind}) => kind === 'no');
	if (screen.kind !== 'walk' && screen.kind !== 'create') return true;
	const {asked, doubted, notes} = screen.state;
	return asked !== undefined || doubted !== undefined || notes.some(({kind}) => kind === 'no');
}

function pressOne(screen: AppScreen, press: Press, world: World): AppScreen {
	switch (screen.kind) {
		case 'home':
			return pressHome(screen, press, world);
		case 'history':
			return pressHistory(screen, press, world);
		case 'create':
			return pressCreate(screen, press, world);
		case 'walk':
			return pressWalk(screen, press, world);
		case 'compare':
			return pressCompare(screen, press, world);
		case 'hearing':
			return pressHearing(screen, press, world);
		case 'planning':
			return pressPlanning(screen, press, world);
		case 'left':
			return screen;
	}
}

/** Puts on disk what is only in memory, while somebody may be typing: what is refused shows and takes no key. */
export function keep(screen: AppScreen, world: World): AppScreen {
	return screen.kind === 'walk' ? keepQuietly(screen, world) : screen;
}

/** Puts on disk what is only in memory when the app is left in a hurry, and tells what went elsewhere or nowhere. */
export function rescue(screen: AppScreen, world: World): readonly string[] {
	const walk = screen.kind === 'compare' || screen.kind === 'hearing' ? screen.back : screen;
	return walk?.kind === 'walk' ? rescueWalk(walk, world) : [];
}
