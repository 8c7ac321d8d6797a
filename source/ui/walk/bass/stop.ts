import type {Profile} from '../../../profile/types.ts';
import type {HubState} from '../hub.ts';
import {type Progress, progressOf} from '../progress.ts';
import type {Stop} from '../stop.ts';
import {bassPrompts} from './bass.ts';
import {bassPage} from './bassPage.tsx';
import {recordedOf} from './recorded.ts';

/** Done where a recording has settled it, for better or as it stood; else by its readings. */
function bassProgress(profile: Profile): Progress {
	const {kind} = recordedOf(profile);
	return kind === 'kept' || kind === 'stands'
		? {state: 'done', answered: 0, required: 0}
		: progressOf(bassPrompts(profile));
}

/** Making subs and mains add up through the crossover. */
export const bassStop = {
	id: 'bass',
	name: 'Bass',
	prompts: bassPrompts,
	page: bassPage,
	progress: bassProgress,
	after: 'proof',
} as const satisfies Stop<HubState>;
