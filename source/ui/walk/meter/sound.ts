import type {Profile} from '../../../profile/types.ts';
import {walkAnswer, withAnswer} from '../answered.ts';
import type {Prompt} from '../prompt/prompt.ts';
import {choicePrompt} from '../prompt/single.ts';
import type {RoundState} from '../roundState.ts';

const soundId = 'meter:sound';

/** Where the noise comes from: the receiver's own, or files that are written beside the profile at once. */
export function soundPrompt(profile: Profile): Prompt<Profile> {
	const kinds = ['receiver', 'files'] as const;
	const answer = walkAnswer(profile, soundId);
	const isBegun = profile.meter?.some(({source}) => source !== 'background') ?? false;
	const chosen = answer === undefined ? -1 : kinds.indexOf(answer as (typeof kinds)[number]);
	const prompt = choicePrompt<Profile>({
		id: soundId,
		stop: 'meter',
		question: 'Where does the noise come from?',
		about: 'The receiver’s menu for levels plays noise in one speaker after the other, as a rule.',
		explain:
			'Files hold noise and the tones that the stop Bass asks for: left alone, right alone, and in rows.',
		chosen: chosen < 0 ? undefined : chosen,
		...(chosen < 0 && isBegun && {other: 'told by the readings'}),
		usual: 0,
		offers: [
			{label: 'The receiver’s own noise', put: subject => withAnswer(subject, soundId, 'receiver')},
			{
				label: 'Files to play; write them beside the profile now',
				hint: 'some seconds',
				put: subject => withAnswer(subject, soundId, 'files'),
			},
		],
	});
	return writesFiles(prompt, 'signals');
}

/** The prompt as an offer whose answer `files` has the screen write the test signals. */
export function writesFiles(
	prompt: Prompt<Profile>,
	wish: NonNullable<RoundState<Profile>['wish']>,
): Prompt<Profile> {
	return {
		...prompt,
		isOffered: true,
		take(subject, text, taking) {
			const taken = prompt.take(subject, text, taking);
			const isFiles = taken.kind === 'taken' && walkAnswer(taken.next, prompt.id) === 'files';
			return isFiles ? {...taken, wish} : taken;
		},
	};
}
