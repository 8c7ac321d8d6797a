import type {Profile} from '../../../profile/types.ts';
import {pagePrompt} from '../prompt/pagePrompt.ts';
import type {Prompt} from '../prompt/prompt.ts';
import {cablePrompts, labelPrompt} from './cablePrompts.ts';
import {askedCables} from './cables.ts';
import {loadPrompts} from './loads.ts';
import {outletPrompts} from './outlets.ts';
import {placePrompt} from './placePrompt.ts';

/** The stop Wiring: its page, each cable, the outlets and what hangs on them, and last the labels. Nothing of it is needed. */
export function wiringPrompts(profile: Profile): Prompt<Profile>[] {
	const cables = askedCables(profile);
	return [
		pagePrompt<Profile>(
			'wiring',
			'Cables, outlets and labels',
			'What runs where, what to buy, the order to connect in. No setting hangs on it.',
		),
		placePrompt(profile),
		...cables.flatMap(cable => cablePrompts(profile, cable)),
		...outletPrompts(profile),
		...loadPrompts(profile),
		...cables.map(cable => labelPrompt(profile, cable)),
	];
}
