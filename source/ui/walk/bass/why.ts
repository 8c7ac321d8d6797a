import type {Profile} from '../../../profile/types.ts';
import {blendReasons, recordedReasons} from '../../../report/said/blendReasons.ts';
import {pairReasons} from '../../../report/said/pair.ts';
import {wrap} from '../../../report/wrap.ts';
import type {ScreenLine} from '../../parts/lines.tsx';
import {actionText} from './actionText.ts';
import {blendOf} from './blendOf.ts';
import {isPairBegun} from './pairPrompts.ts';
import {recordedOf} from './recorded.ts';

/** Lines of reasons, as at Dial-in. */
const mostReasonLines = 4;

/** Whether anything was read or recorded that an answer could come from. */
export function hasReasons(profile: Profile): boolean {
	const {blocks, pair} = blendOf(profile);
	return (
		recordedOf(profile).kind !== 'none' ||
		(pair !== undefined && isPairBegun(pair)) ||
		blocks.some(({steps}) => steps.some(({isTaken}) => isTaken))
	);
}

/** How what Bass advises came about: old and new, then the reasons, in a few lines. */
export function bassWhyLines(profile: Profile, columns: number): ScreenLine[] {
	const state = recordedOf(profile);
	const result = blendOf(profile);
	const {pair, blocks} = result;
	// The subs against each other come first; once the fronts are read, these are the question.
	const isOfPair =
		pair !== undefined && isPairBegun(pair) && !blocks.some(({steps}) => steps.some(({isTaken}) => isTaken));
	const wanted = isOfPair ? pair.wanted : result.wanted;
	const actions = state.kind === 'none' ? (wanted?.setting?.actions ?? []) : [];
	const reasons =
		state.kind === 'none'
			? isOfPair
				? pairReasons(pair)
				: blendReasons(result)
			: recordedReasons(profile, state);
	const head = actions.map(action => actionText(profile, action)).join('; ') || 'Why this';
	return [
		...wrap(head, columns, '  ').map((text): ScreenLine => ({text, style: 'strong'})),
		...wrap(reasons.join(' '), columns, '  ')
			.slice(0, mostReasonLines)
			.map((text): ScreenLine => ({text})),
		{text: ''},
	];
}
