import type {Profile} from '../../profile/types.ts';
import {derived} from '../derived.ts';
import {bassStop} from './bass/stop.ts';
import {withCautions} from './cautions.ts';
import {dialInStop} from './dialIn/dialInPage.tsx';
import {keepStop} from './keep/keepPage.tsx';
import {nextOf} from './keep/next.ts';
import {kitDrawer} from './kit/kit.ts';
import {meterStop} from './meter/meter.ts';
import {entryOf} from './moving.ts';
import type {PageDoor, WalkFacts} from './page.ts';
import type {DrawerId, StopId, WalkPlace} from './places.ts';
import {progressOf, type StopStatus} from './progress.ts';
import type {Prompt} from './prompt/prompt.ts';
import {proofStop} from './proof/proofPage.tsx';
import {roomStop} from './room/room.ts';
import type {Round} from './roundState.ts';
import {rowIdOf, rowsOf} from './solution.ts';
import {type PlacedStop, placedStop} from './stop.ts';
import {tapeStop} from './tape/tape.ts';
import {wiringDrawer} from './wiring/wiringPage.tsx';

/** The stops of the walk, in order. */
export const stops: readonly PlacedStop<StopId>[] = [
	placedStop(roomStop),
	placedStop(tapeStop),
	placedStop(meterStop),
	placedStop(dialInStop),
	placedStop(bassStop),
	placedStop(proofStop),
	placedStop(keepStop),
];

/** What is opened from anywhere and leads back there. */
export const drawers: readonly PlacedStop<DrawerId>[] = [placedStop(kitDrawer), placedStop(wiringDrawer)];

/** Every question of the walk for a profile, in the order of the stops, drawers last. */
export const promptsFor: (profile: Profile) => readonly Prompt<Profile>[] = derived(
	{profile: (profile: Profile) => profile},
	({profile}) => [...stops, ...drawers].flatMap(({prompts}) => withCautions(prompts(profile))),
);

/** The page that stands in the place of a prompt; undefined where a question is asked. */
export function doorOf({kind, stop}: Prompt<Profile>): PageDoor | undefined {
	return kind === 'page' ? stopAt(stop)?.door : undefined;
}

export function stopAt(place: WalkPlace): PlacedStop | undefined {
	return stops.find(({id}) => id === place) ?? drawers.find(({id}) => id === place);
}

/** Every stop with what it still needs. Drawers are never undone, and so are not among them. */
export const stopStatusOf: (profile: Profile) => readonly StopStatus[] = derived(
	{profile: (profile: Profile) => profile},
	({profile}) =>
		stops.map(({id, name, progress}): StopStatus => {
			const own = promptsFor(profile).filter(({stop}) => stop === id);
			return {...(progress?.(profile) ?? progressOf(own)), id, name};
		}),
);

/** Where one goes on from a stop: the next one that has a page or something open; the page of the last. */
function after(profile: Profile, place: WalkPlace): string | undefined {
	const prompts = promptsFor(profile);
	const follows = stops.find(({id}) => id === stopAt(place)?.after);
	if (!follows) return undefined;
	const own = prompts.filter(({stop}) => stop === follows.id);
	const isPage = own.some(({kind}) => kind === 'page');
	const hasOpen = own.some(({isAnswered, isRequired}) => isRequired && !isAnswered);
	return isPage || hasOpen ? entryOf(own, profile.walk?.skipped ?? [])?.id : after(profile, follows.id);
}

/** The walk as a round of questions about a profile. */
export const walkRound: Round<Profile> = {
	prompts: promptsFor,
	skipped: profile => profile.walk?.skipped ?? [],
	withSkipped: (profile, skipped) =>
		skipped.length === 0 && !profile.walk?.skipped
			? profile
			: {...profile, walk: {...profile.walk, skipped: [...skipped]}},
	after,
	rest: profile => nextOf(profile, stopStatusOf(profile)).promptId ?? 'keep',
	nameOf: place => stopAt(place)?.name ?? '',
	isDrawer: place => drawers.some(({id}) => id === place),
	rows: profile => rowsOf(profile, undefined),
	rowOf: (profile, {row}) => rowIdOf(profile, row),
};

/** What the pages may know of the walk. */
export function factsOf(profile: Profile): WalkFacts {
	return {
		status: stopStatusOf(profile),
		prompts: promptsFor(profile).filter(({stop}) => !walkRound.isDrawer(stop)),
	};
}
