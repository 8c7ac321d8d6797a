import type {ReactNode} from 'react';
import type {Profile} from '../../profile/types.ts';
import type {Written} from '../files.ts';
import type {Press} from '../keys/press.ts';
import type {StopStatus} from './progress.ts';
import type {Prompt} from './prompt/prompt.ts';

/** What a page may know of the walk around it. */
export type WalkFacts = {
	readonly status: readonly StopStatus[];
	/** Questions of the stops, drawers left out. */
	readonly prompts: readonly Prompt<Profile>[];
};

/** What the walk brings to a page: the clock is the interface's. */
export type PageWorld = {readonly decidedAt: string; readonly walk: WalkFacts};

/** What a page made of a key press. `none`: not its key; the walk's own keys (arrows, undo, leave) get it. */
export type PagePress<State> =
	| {readonly kind: 'none'}
	| {readonly kind: 'state'; readonly state: State}
	/** The profile changed: it is saved at once, and undo takes it back. */
	| {readonly kind: 'profile'; readonly profile: Profile; readonly state: State}
	/** To a prompt of the walk, such as the first open question of the page's own stop; there the next value replaces the last where `isCorrecting`. */
	| {readonly kind: 'go'; readonly promptId: string; readonly isCorrecting?: boolean}
	/** Texts to write beside the profile; the page hears what became of them. */
	| {
			readonly kind: 'write';
			readonly documents: ReadonlyArray<{readonly ending: string; readonly text: string}>;
			readonly after: (written: readonly Written[]) => State;
	  }
	/** To the comparison with an older profile; the state to stay in where there is none. */
	| {readonly kind: 'compare'; readonly withoutOlder: State}
	/** To a recorded round. */
	| {readonly kind: 'hear'; readonly round: 'first' | 'proof'}
	| {readonly kind: 'next'}
	| {readonly kind: 'previous'};

export type PageKeys = ReadonlyArray<readonly [press: string, does: string]>;

type PageView = {
	readonly profile: Profile;
	readonly columns: number;
	readonly height: number;
	readonly walk: WalkFacts;
};

/** A stop with a screen of its own instead of a question, such as the one for typing into the receiver. Pure but for the view. */
export type Page<State> = {
	readonly start: (profile: Profile) => State;
	readonly press: (profile: Profile, state: State, press: Press, world: PageWorld) => PagePress<State>;
	/** Keys for the footer, most useful first: what to press and what it does. */
	readonly keys: PageKeys | ((profile: Profile, state: State) => PageKeys);
	/** Draws within `columns` × `height` cells. */
	readonly view: (props: PageView & {readonly state: State}) => ReactNode;
};

/** A page with its state inside, so that the walk can hold any. */
export type OpenPage = {
	readonly press: (profile: Profile, press: Press, world: PageWorld) => PagePress<OpenPage>;
	readonly keys: (profile: Profile) => PageKeys;
	readonly view: (props: PageView) => ReactNode;
};

/** Opens a page as it starts for a profile. */
export type PageDoor = (profile: Profile) => OpenPage;

export function openPage<State>(page: Page<State>, state: State): OpenPage {
	const inside = (next: State) => openPage(page, next);
	return {
		press(profile, press, world) {
			const pressed = page.press(profile, state, press, world);
			switch (pressed.kind) {
				case 'state':
				case 'profile':
					return {...pressed, state: inside(pressed.state)};
				case 'write':
					return {...pressed, after: written => inside(pressed.after(written))};
				case 'compare':
					return {...pressed, withoutOlder: inside(pressed.withoutOlder)};
				default:
					return pressed;
			}
		},
		keys: profile => (typeof page.keys === 'function' ? page.keys(profile, state) : page.keys),
		view: props => page.view({...props, state}),
	};
}
