import type {Profile} from '../../profile/types.ts';
import {openPage, type Page, type PageDoor} from './page.ts';
import type {DrawerId, StopId} from './places.ts';
import type {Progress} from './progress.ts';
import type {Prompt} from './prompt/prompt.ts';

/** A stop of the walk, or a drawer, as one object: a new one is its folder and a line in `stops.ts`. */
export type Stop<State> = {
	readonly id: StopId | DrawerId;
	readonly name: string;
	/** Its questions in order; a page of its own is one of them. */
	readonly prompts: (profile: Profile) => readonly Prompt<Profile>[];
	/** The screen that stands in the place of the prompt of kind `page`. */
	readonly page?: Page<State>;
	/** How far it is, where that does not follow from its questions. */
	readonly progress?: (profile: Profile) => Progress;
	/** Where it leads when nothing needed is open in it. */
	readonly after?: StopId;
};

/** A stop among others, whatever state its page has. */
export type PlacedStop<Id extends StopId | DrawerId = StopId | DrawerId> = Omit<
	Stop<never>,
	'page' | 'id'
> & {
	readonly id: Id;
	readonly door?: PageDoor;
};

/** The stop as the walk holds it: its page opens with its state inside. */
export function placedStop<State, Id extends StopId | DrawerId>({
	page,
	...stop
}: Stop<State> & {readonly id: Id}): PlacedStop<Id> {
	return page ? {...stop, door: profile => openPage(page, page.start(profile))} : stop;
}
