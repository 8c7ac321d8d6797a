import type {Profile} from '../../../profile/types.ts';
import {pairLimitPrompt} from '../kit/speakers.ts';
import {speakerPairs} from '../order.ts';
import type {Prompt} from '../prompt/prompt.ts';

/**
How low the speakers go, asked before the crossovers that hang on it are decided. Who has no data sheet passes all
of them with the first.
*/
export function limitPrompts(profile: Profile): Prompt<Profile>[] {
	const {receiver, subs = [], meter = [], settings = []} = profile;
	const isDue = meter.length > 0 && settings.every(({origin}) => origin !== 'solved');
	if (!receiver || subs.length === 0 || !isDue) return [];
	const prompts = speakerPairs(profile).map((pair): Prompt<Profile> => {
		const prompt = pairLimitPrompt(profile, pair);
		return {...prompt, id: prompt.id.replace('kit:', 'dialIn:'), stop: 'dialIn', isOffered: true};
	});
	const [first, ...others] = prompts;
	if (!first || prompts.some(({isAnswered}) => isAnswered)) return prompts;
	const about =
		'From the data sheet, such as 45 or 45 -6dB; the crossover depends on it. Enter: no limit of any speaker is known.';
	return [{...first, about, passesAlso: others.map(({id}) => id)}, ...others];
}
