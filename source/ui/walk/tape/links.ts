import type {Profile} from '../../../profile/types.ts';
import {walkAnswer, withAnswer} from '../answered.ts';
import {processorPrompts} from '../kit/processor.ts';
import {pairLatencyPrompt} from '../kit/speakers.ts';
import {subLatencyPrompt} from '../kit/subs.ts';
import {speakerPairs} from '../order.ts';
import type {Prompt} from '../prompt/prompt.ts';
import {choicePrompt} from '../prompt/single.ts';

const linksId = 'tape:links';

/**
What delays sound besides its way, asked where the distances are: a box or a link that is late moves every distance
that is typed in. The questions themselves are those of the kit.
*/
export function linkPrompts(profile: Profile): Prompt<Profile>[] {
	const {bassProcessor, subs = []} = profile;
	const answer = walkAnswer(profile, linksId);
	const isLate =
		bassProcessor !== undefined ||
		[...profile.channels, ...subs].some(({latencyMs}) => latencyMs !== undefined);
	const kinds = [
		['none', 'Nothing: cables only'],
		['link', 'A wireless link or converter'],
		...(subs.length > 0 ? [['processor', 'A bass processor before the subs'] as const] : []),
	] as const;
	const chosen = kinds.findIndex(([kind]) => kind === answer);
	const question = choicePrompt<Profile>({
		id: linksId,
		stop: 'tape',
		question: 'Is there anything in a line that is late?',
		about: 'A wireless speaker or sub, a converter, a bass processor.',
		explain: 'Such a box delays its speaker by some milliseconds, and so moves the distances to type in.',
		chosen: chosen >= 0 ? chosen : undefined,
		...(chosen < 0 && isLate && {other: 'told in the kit'}),
		usual: 0,
		offers: kinds.map(([kind, label]) => ({label, put: subject => withAnswer(subject, linksId, kind)})),
	});
	return [
		{...question, isOffered: true},
		...(answer === 'processor' ? processorPrompts(profile).slice(0, 2).map(asked) : []),
		...(answer === 'link'
			? [
					...speakerPairs(profile).map(pair => pairLatencyPrompt(profile, pair)),
					...subs.map(subLatencyPrompt),
				].map(asked)
			: []),
	];
}

/** A question of the kit as this stop asks it. */
function asked(prompt: Prompt<Profile>): Prompt<Profile> {
	return {...prompt, id: prompt.id.replace('kit:', 'tape:'), stop: 'tape', isOffered: true};
}
