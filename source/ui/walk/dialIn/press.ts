import type {Profile} from '../../../profile/types.ts';
import {commandOf} from '../../keys/binding.ts';
import type {Press} from '../../keys/press.ts';
import type {PagePress, PageWorld} from '../page.ts';
import {withDecided, withTick} from './decide.ts';
import type {DialItem} from './items.ts';
import {type DialInMode, dialInKeymap} from './keymap.ts';
import {type Situation, situationOf} from './situation.ts';

export type DialInState = {
	/** Item that is shown; the first open one where not set or gone. */
	readonly itemId?: string;
	readonly isList: boolean;
	/** The user stays with a set that newer readings would change. */
	readonly isOldKept: boolean;
};

export const dialInStart: DialInState = {isList: false, isOldKept: false};

/** What the keys mean in a situation; undefined where there is nothing to type in. */
export function dialInMode(situation: Situation, {isList, isOldKept}: DialInState): DialInMode | undefined {
	if (situation.kind === 'nothing') return undefined;
	if (situation.kind === 'undecided') return 'confirm';
	if (situation.kind === 'stale' && !isOldKept) return 'stale';
	return isList ? 'list' : 'one';
}

/** Place of the shown item among all. */
export function itemIndex(items: readonly DialItem[], itemId: string | undefined): number {
	const at = items.findIndex(({id}) => id === itemId);
	return at >= 0
		? at
		: Math.max(
				0,
				items.findIndex(({isDone}) => !isDone),
			);
}

/** One key at the stop for typing the settings in. */
export function pressDialIn(
	profile: Profile,
	state: DialInState,
	press: Press,
	{decidedAt}: PageWorld,
): PagePress<DialInState> {
	const situation = situationOf(profile);
	const mode = dialInMode(situation, state);
	const command = mode && commandOf(dialInKeymap, mode, press);
	if (!command || situation.kind === 'nothing') return {kind: 'none'};
	if (command === 'decide')
		return {kind: 'profile', profile: withDecided(profile, decidedAt), state: dialInStart};
	if (situation.kind === 'undecided') return {kind: 'none'};
	const {items, set} = situation;
	const at = itemIndex(items, state.itemId);
	const item = items[at];
	const move = (to: number): PagePress<DialInState> => ({
		kind: 'state',
		state: {...state, itemId: items[to]!.id},
	});
	switch (command) {
		case 'keepOld':
			return {kind: 'state', state: {...state, isOldKept: true}};
		case 'list':
			return {kind: 'state', state: {...state, itemId: item?.id, isList: !state.isList}};
		case 'previous':
			return at === 0 ? {kind: 'previous'} : move(at - 1);
		case 'next':
			return at >= items.length - 1 ? {kind: 'none'} : move(at + 1);
		case 'untick':
			return item
				? {
						kind: 'profile',
						profile: withTick(profile, set.id, item.id, !item.isDone),
						state: {...state, itemId: item.id},
					}
				: {kind: 'none'};
		case 'tick': {
			if (!item || items.every(({isDone}) => isDone)) return {kind: 'next'};
			const open = [...items.slice(at + 1), ...items.slice(0, at)].find(({isDone}) => !isDone);
			const next = {...state, itemId: open?.id ?? item.id};
			if (item.isDone) return {kind: 'state', state: next};
			return {kind: 'profile', profile: withTick(profile, set.id, item.id, true), state: next};
		}
	}
}
