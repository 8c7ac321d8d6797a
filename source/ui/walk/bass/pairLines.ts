import type {Profile} from '../../../profile/types.ts';
import {pairOdds, pairOffer, pairReadingSentences, pairStatus} from '../../../report/said/pair.ts';
import type {BlendResult} from '../../../study/calibration/blend/blendResult.ts';
import type {ScreenLine} from '../../parts/lines.tsx';
import {situationOf} from '../dialIn/situation.ts';
import {actionText} from './actionText.ts';
import {isPairBegun} from './pairPrompts.ts';

type Put = (text: string, style?: ScreenLine['style'], sign?: string) => ScreenLine[];

/** The extra as it is offered beside the meter's ways, and what it takes. */
export function pairOfferLines({pair, isSetByRecording}: BlendResult, put: Put): ScreenLine[] {
	return pair && !isSetByRecording ? put(`Asked before them: ${pairOffer(pair)}`, undefined, '   ') : [];
}

/** What it won. */
export function pairOddsLines({pair, isSetByRecording}: BlendResult, put: Put): ScreenLine[] {
	return pair && !isSetByRecording ? put(pairOdds(pair), 'quiet', '· ') : [];
}

/** How far the subs against each other are, what to turn, and where it goes on; nothing where it was not begun. */
export function pairStateLines(profile: Profile, {pair}: BlendResult, put: Put): ScreenLine[] {
	if (!pair || !isPairBegun(pair)) return [];
	const {status, wanted} = pair;
	const isGood = status === 'kept' || status === 'stands';
	const isWaiting = status === 'kept' && !wanted?.isDecided && situationOf(profile).kind === 'stale';
	const actions = status === 'to try' ? (wanted?.setting?.actions ?? []) : [];
	return [
		...put(
			pairStatus(profile, pair),
			isGood ? 'good' : status === 'reading' ? undefined : 'strong',
			isGood ? '✓ ' : '',
		),
		...actions.flatMap(action => put(actionText(profile, action), 'value', '▸ ')),
		...(isWaiting ? put('Enter goes to Dial-in, where it waits to be ticked.') : []),
		...pairReadingSentences(pair).flatMap(text => put(text, 'doubt', '? ')),
	];
}

/** The old entries after a put-back are those that the last change moved from. */
export function pairPutBack({pair, blocks}: BlendResult): NonNullable<BlendResult['pair']>['wanted'] {
	const isOver = blocks.some(({steps}) => steps.some(({isTaken}) => isTaken));
	return pair?.status === 'put back' && !isOver ? pair.wanted : undefined;
}
