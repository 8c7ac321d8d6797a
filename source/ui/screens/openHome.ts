import type {HomeScreen, World} from './screen.ts';

/** The home screen, with the list read anew. The newest profile of the user's own is chosen first. */
export function openHome({files}: World, notes: HomeScreen['notes'] = [], chosen?: string): HomeScreen {
	const entries = files.list();
	const at = entries.findIndex(({file}) => file === chosen);
	return {kind: 'home', entries, cursor: Math.max(0, at), notes, isHelpShown: false};
}
