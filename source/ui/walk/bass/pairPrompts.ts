import type {Profile} from '../../../profile/types.ts';
import {pairOdds, pairOffer, pairOutdates, pairWayName} from '../../../report/said/pair.ts';
import type {BlendResult} from '../../../study/calibration/blend/blendResult.ts';
import type {PairResult} from '../../../study/calibration/blend/pair/pairResult.ts';
import type {BlendBlock, BlendStep} from '../../../study/calibration/blend/steps.ts';
import {walkAnswer, withAnswer} from '../answered.ts';
import type {Prompt} from '../prompt/prompt.ts';
import {choicePrompt} from '../prompt/single.ts';

const offerId = 'bass:pair';

/** Whether anything of it was read. */
export const isPairBegun = ({blocks, trial}: PairResult): boolean =>
	trial !== undefined || blocks.some(({steps}) => steps.some(({isTaken}) => isTaken));

/** Whether it was said that the subs are to be set against each other, or it was begun. */
export function isPairChosen(profile: Profile, {pair}: BlendResult): boolean {
	return pair !== undefined && (isPairBegun(pair) || walkAnswer(profile, offerId) === 'yes');
}

/** Whether a change between the subs waits to be typed in, before anything is read under it. */
export const isPairToDialIn = ({pair}: BlendResult): boolean =>
	pair?.status === 'kept' && !pair.wanted?.isDecided;

/** The extra before the fronts are read, with what it takes and won; its readings where it was chosen. */
export function pairPrompts(
	profile: Profile,
	result: BlendResult,
	readingOf: (block: BlendBlock, step: BlendStep) => Prompt<Profile>,
): Prompt<Profile>[] {
	const {pair, blocks, isSetByRecording} = result;
	if (!pair || isSetByRecording) return [];
	const isFrontsBegun = blocks.some(({steps}) => steps.some(({isTaken}) => isTaken));
	const isBegun = isPairBegun(pair);
	if (isFrontsBegun && !isBegun && walkAnswer(profile, offerId) === undefined) return [];
	const isOpen = pair.status === 'reading' || pair.status === 'to try';
	const readings = isPairChosen(profile, result)
		? pair.blocks.flatMap(block =>
				block.steps.filter(({isTaken}) => isTaken || isOpen).map(step => readingOf(block, step)),
			)
		: [];
	return [offerPrompt(profile, pair, isBegun), ...readings];
}

function offerPrompt(profile: Profile, pair: PairResult, isBegun: boolean): Prompt<Profile> {
	const answers = ['yes', 'no'];
	const answer = walkAnswer(profile, offerId) ?? (isBegun ? 'yes' : undefined);
	const {readings, minutes} = pair.cost;
	return choicePrompt<Profile>({
		id: offerId,
		stop: 'bass',
		question: `${pairWayName} first?`,
		about:
			'An extra for the bass of the LFE channel. What is not louder there, or makes the fronts softer, goes back.',
		explain: [pairOffer(pair), pairOdds(pair), pairOutdates(pair)].filter(Boolean).join(' '),
		chosen: answer === undefined ? undefined : answers.indexOf(answer),
		usual: 1,
		offers: [
			{
				label: 'Yes, before the fronts',
				hint: `${readings} readings, ${minutes} min`,
				put: subject => withAnswer(subject, offerId, 'yes'),
			},
			{
				label: 'No, straight to the fronts',
				hint: 'they stay as distances put them',
				put: subject => withAnswer(subject, offerId, 'no'),
			},
		],
	});
}
