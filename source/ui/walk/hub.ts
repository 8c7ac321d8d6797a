import type {Profile} from '../../profile/types.ts';
import type {Binding} from '../keys/binding.ts';
import {commandOf, footerOf} from '../keys/binding.ts';
import type {Press} from '../keys/press.ts';
import type {PageKeys, PagePress} from './page.ts';

/** The page of a stop that also asks questions: it scrolls, and Enter goes where the stop goes on. */
export type HubState = {readonly from: number; readonly isWhyShown?: boolean};

type HubCommand = 'goOn' | 'up' | 'down' | 'questions';

/** Lines that one arrow moves. */
const scrollLines = 4;
const keymap: ReadonlyArray<Binding<HubCommand, 'hub'>> = [
	{presses: ['enter'], command: 'goOn', modes: ['hub'], shown: ['Enter', 'go on']},
	{presses: ['up'], command: 'up', modes: ['hub'], shown: ['↑↓', 'scroll']},
	{presses: ['down'], command: 'down', modes: ['hub']},
	{presses: ['e'], command: 'questions', modes: ['hub'], shown: ['e', 'readings']},
];

export const hubStart: HubState = {from: 0};
export const hubKeys: PageKeys = footerOf(keymap, 'hub');

/** What a hub needs to know of its stop. */
export type HubPlan = {
	/** Prompt that Enter goes to; the next stop where there is none. */
	readonly goOn: string | undefined;
	/** First question of the stop, to look at readings again. */
	readonly first: string | undefined;
	/** The question whose value is furthest off: it is the one to read again, in its place. */
	readonly worst?: string | undefined;
	/** Lines of the page at its narrowest, beyond which it does not scroll. */
	readonly lines: number;
};

/** One key on the page of a stop. Upwards from the top it leaves to the stop before. */
export function pressHub(
	state: HubState,
	press: Press,
	plan: (profile: Profile) => HubPlan,
	profile: Profile,
): PagePress<HubState> {
	switch (commandOf(keymap, 'hub', press)) {
		case 'goOn': {
			const {goOn} = plan(profile);
			return goOn === undefined ? {kind: 'next'} : {kind: 'go', promptId: goOn};
		}

		case 'questions': {
			const {first, worst} = plan(profile);
			if (worst !== undefined) return {kind: 'go', promptId: worst, isCorrecting: true};
			return first === undefined ? {kind: 'none'} : {kind: 'go', promptId: first};
		}

		case 'up':
			return state.from === 0 ? {kind: 'previous'} : scrolledBy(state, -scrollLines);
		case 'down': {
			const most = plan(profile).lines;
			return state.from + scrollLines >= most ? {kind: 'none'} : scrolledBy(state, scrollLines);
		}

		default:
			return {kind: 'none'};
	}
}

function scrolledBy(state: HubState, by: number): PagePress<HubState> {
	return {kind: 'state', state: {...state, from: Math.max(0, state.from + by)}};
}
