import type {HubState} from '../hub.ts';
import type {Stop} from '../stop.ts';
import {bassPrompts} from './bass.ts';
import {bassPage} from './bassPage.tsx';

/** Making subs and mains add up through the crossover. */
export const bassStop = {
	id: 'bass',
	name: 'Bass',
	prompts: bassPrompts,
	page: bassPage,
	after: 'proof',
} as const satisfies Stop<HubState>;
