import type {Listed} from '../files.ts';
import {longestTyped, type Press} from '../keys/press.ts';
import {openHome} from './openHome.ts';
import type {HomeScreen, World} from './screen.ts';

/** Takes the chosen profile out of the list; it is moved, and `u` brings it back. */
export function takeOut(screen: HomeScreen, {file, name}: Listed, world: World): HomeScreen {
	const held = world.files.hold(file);
	if (!held.ok) return {...screen, notes: [{kind: 'no', text: held.text}]};
	world.files.release(file);
	const removed = world.files.remove(file);
	if (!removed.ok) return {...screen, notes: [{kind: 'no', text: removed.text}]};
	const text = `${name}: moved to ${removed.folder}. u brings it back.`;
	const home = openHome(world, [{kind: 'note', text}]);
	return {...home, cursor: Math.min(screen.cursor, home.entries.length), removed: removed.removed};
}

/** Brings back what was taken out last. */
export function bringBack(removed: string, world: World): HomeScreen {
	const back = world.files.restore(removed);
	if (!back.ok) return openHome(world, [{kind: 'no', text: back.text}]);
	return openHome(world, [{kind: 'note', text: 'It is back.'}], back.file);
}

/** One key while a new name is typed for the chosen profile. The file keeps its own name. */
export function pressRename(screen: HomeScreen, press: Press, world: World): HomeScreen {
	const {renaming = '', entries, cursor} = screen;
	switch (press.key) {
		case 'character':
		case 'characters':
			return {...screen, renaming: (renaming + press.text).slice(0, longestTyped), notes: []};
		case 'erase':
			return {...screen, renaming: [...renaming].slice(0, -1).join('')};
		case 'escape':
			return {...screen, renaming: undefined, notes: []};
		case 'enter': {
			const file = entries[cursor]?.file;
			const name = renaming.trim();
			if (file === undefined || name === '') return {...screen, renaming: undefined};
			return renamed({...screen, renaming: undefined}, file, name, world);
		}

		default:
			return screen;
	}
}

function renamed(screen: HomeScreen, file: string, name: string, world: World): HomeScreen {
	const refuse = (text: string): HomeScreen => ({...screen, notes: [{kind: 'no', text}]});
	const held = world.files.hold(file);
	if (!held.ok) return refuse(held.text);
	const loaded = world.files.load(file);
	const saved = loaded.ok ? world.files.save(file, {...loaded.profile, name}, loaded.mark) : loaded;
	world.files.release(file);
	if (!saved.ok) return refuse(saved.text);
	return openHome(world, [{kind: 'note', text: `Now called ${name}.`}], file);
}
