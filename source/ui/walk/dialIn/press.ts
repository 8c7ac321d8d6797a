import type {Profile} from '../../../profile/types.ts';
import {commandOf} from '../../keys/binding.ts';
import type {Press} from '../../keys/press.ts';
import type {PagePress, PageWorld} from '../page.ts';
import {withDecided, withTicks} from './decide.ts';
import type {DialItem} from './items.ts';
import {type DialInCommand, type DialInMode, dialInKeymap} from './keymap.ts';
import {dialPages, placeInPages} from './pages.ts';
import {type Situation, situationOf} from './situation.ts';

export type DialInState = {
	/** Tick of the value under the cursor; the first open one where not set or gone. */
	readonly tick?: string;
	/** Channel by channel in the place of the boxes' own pages. */
	readonly isSingle: boolean;
	/** How the value under the cursor came about is told. */
	readonly isWhyShown: boolean;
	/** The user stays with a set that newer readings would change. */
	readonly isOldKept: boolean;
};

export const dialInStart: DialInState = {isSingle: false, isWhyShown: false, isOldKept: false};

/** What the keys mean in a situation; undefined where there is nothing to type in. */
export function dialInMode(
	situation: Situation,
	{isSingle, isWhyShown, isOldKept}: DialInState,
): DialInMode | undefined {
	if (situation.kind === 'nothing') return undefined;
	if (situation.kind === 'undecided') return 'confirm';
	if (situation.kind === 'stale' && !isOldKept) return 'stale';
	if (isWhyShown) return 'why';
	return isSingle ? 'one' : 'pages';
}

/** Place of the item that holds the value under the cursor; the first open one where none is. */
export function itemIndex(items: readonly DialItem[], tick: string | undefined): number {
	const at = items.findIndex(({values}) => values.some(value => value.tick === tick));
	const open = items.findIndex(({isDone}) => !isDone);
	return at >= 0 ? at : Math.max(0, open);
}

/** One key at the stop for typing the settings in. */
export function pressDialIn(
	profile: Profile,
	state: DialInState,
	press: Press,
	{decidedAt}: Pick<PageWorld, 'decidedAt'>,
): PagePress<DialInState> {
	const situation = situationOf(profile);
	const mode = dialInMode(situation, state);
	const command = mode && commandOf(dialInKeymap, mode, press);
	if (!command || situation.kind === 'nothing') return {kind: 'none'};
	if (command === 'decide')
		return {kind: 'profile', profile: withDecided(profile, decidedAt), state: dialInStart};
	if (situation.kind === 'undecided') return {kind: 'none'};
	const to = (change: Partial<DialInState>): PagePress<DialInState> => ({
		kind: 'state',
		state: {...state, ...change},
	});
	if (command === 'keepOld') return to({isOldKept: true});
	if (command === 'view') return to({isSingle: !state.isSingle});
	if (command === 'why' || command === 'back') return to({isWhyShown: command === 'why'});
	const desk = {profile, situation, state, to};
	return state.isSingle ? pressSingle(desk, command) : pressPages(desk, command);
}

type Desk = {
	readonly profile: Profile;
	readonly situation: Exclude<Situation, {kind: 'nothing' | 'undecided'}>;
	readonly state: DialInState;
	readonly to: (change: Partial<DialInState>) => PagePress<DialInState>;
};

/** Keys of the boxes' own pages. */
function pressPages({profile, situation, state, to}: Desk, command: DialInCommand): PagePress<DialInState> {
	const {items, set} = situation;
	const pages = dialPages(profile, items);
	const rows = pages.flatMap(page => page.rows);
	const place = placeInPages(pages, state.tick);
	const page = pages[place.page];
	const row = page?.rows[place.row];
	if (!page || !row) return {kind: 'next'};
	const at = rows.findIndex(({tick}) => tick === row.tick);
	switch (command) {
		case 'previous':
			return at === 0 ? {kind: 'previous'} : to({tick: rows[at - 1]!.tick});
		case 'next':
			return at === rows.length - 1 ? {kind: 'none'} : to({tick: rows[at + 1]!.tick});
		case 'previousPage':
			return to({tick: pages[Math.max(0, place.page - 1)]!.rows[0]!.tick});
		case 'nextPage':
			return to({tick: pages[Math.min(pages.length - 1, place.page + 1)]!.rows[0]!.tick});
		case 'tickRow': {
			const after = withTicks(profile, set, [row.tick], !row.isDone);
			const next = row.isDone ? row : (rows[at + 1] ?? row);
			return {kind: 'profile', profile: after, state: {...state, tick: next.tick}};
		}

		case 'tickPage': {
			if (rows.every(({isDone}) => isDone)) return {kind: 'next'};
			const ticks = page.rows.map(({tick}) => tick);
			const others = [...pages.slice(place.page + 1), ...pages.slice(0, place.page)];
			const open = others.flatMap(other => other.rows).find(({isDone}) => !isDone);
			const next = {...state, tick: open?.tick ?? row.tick};
			if (page.rows.every(({isDone}) => isDone)) return {kind: 'state', state: next};
			return {kind: 'profile', profile: withTicks(profile, set, ticks, true), state: next};
		}

		default:
			return {kind: 'none'};
	}
}

/** Keys of the view that shows one channel or output at a time. */
function pressSingle({profile, situation, state, to}: Desk, command: DialInCommand): PagePress<DialInState> {
	const {items, set} = situation;
	const at = itemIndex(items, state.tick);
	const item = items[at];
	const tickOf = (one: DialItem | undefined) => one?.values[0]?.tick;
	switch (command) {
		case 'previous':
			return at === 0 ? {kind: 'previous'} : to({tick: tickOf(items[at - 1])});
		case 'next':
			return at >= items.length - 1 ? {kind: 'none'} : to({tick: tickOf(items[at + 1])});
		case 'untick':
			return item
				? {
						kind: 'profile',
						profile: withTicks(profile, set, [item.id], !item.isDone),
						state: {...state, tick: tickOf(item)},
					}
				: {kind: 'none'};
		case 'tick': {
			if (!item || items.every(({isDone}) => isDone)) return {kind: 'next'};
			const open = [...items.slice(at + 1), ...items.slice(0, at)].find(({isDone}) => !isDone);
			const next = {...state, tick: tickOf(open ?? item)};
			if (item.isDone) return {kind: 'state', state: next};
			return {kind: 'profile', profile: withTicks(profile, set, [item.id], true), state: next};
		}

		default:
			return {kind: 'none'};
	}
}
