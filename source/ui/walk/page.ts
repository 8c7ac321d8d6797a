import type {ReactNode} from 'react';
import type {Profile} from '../../profile/types.ts';
import type {Written} from '../files.ts';
import type {Press} from '../keys/press.ts';

/** What the walk brings to a page: the clock is the interface's. */
export type PageWorld = {readonly decidedAt: string};

/** What a page made of a key press. `none`: not its key; the walk's own keys (arrows, undo, leave) get it. */
export type PagePress<State> =
	| {readonly kind: 'none'}
	| {readonly kind: 'state'; readonly state: State}
	/** The profile changed: it is saved at once, and undo takes it back. */
	| {readonly kind: 'profile'; readonly profile: Profile; readonly state: State}
	/** To a prompt of the walk, such as the first open question of the page's own stop. */
	| {readonly kind: 'go'; readonly promptId: string}
	/** Texts to write beside the profile; the page hears what became of them. */
	| {
			readonly kind: 'write';
			readonly documents: ReadonlyArray<{readonly ending: string; readonly text: string}>;
			readonly after: (written: readonly Written[]) => State;
	  }
	/** To the comparison with an older profile; the state to stay in where there is none. */
	| {readonly kind: 'compare'; readonly withoutOlder: State}
	| {readonly kind: 'next'}
	| {readonly kind: 'previous'};

export type PageKeys = ReadonlyArray<readonly [press: string, does: string]>;

/** A stop with a screen of its own instead of a question, such as the one for typing into the receiver. Pure but for the view. */
export type Page<State> = {
	readonly start: (profile: Profile) => State;
	readonly press: (profile: Profile, state: State, press: Press, world: PageWorld) => PagePress<State>;
	/** Keys for the footer, most useful first: what to press and what it does. */
	readonly keys: PageKeys | ((profile: Profile, state: State) => PageKeys);
	/** Draws within `columns` × `height` cells. */
	readonly view: (props: {
		readonly profile: Profile;
		readonly state: State;
		readonly columns: number;
		readonly height: number;
	}) => ReactNode;
};

/** The keys of a page as it stands. */
export function keysOf<State>({keys}: Page<State>, profile: Profile, state: State): PageKeys {
	return typeof keys === 'function' ? keys(profile, state) : keys;
}
