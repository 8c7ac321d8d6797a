import type {Profile} from '../../../profile/types.ts';
import {blendReasons, recordedReasons} from '../../../report/said/blendReasons.ts';
import {wrap} from '../../../report/wrap.ts';
import type {ScreenLine} from '../../parts/lines.tsx';
import {actionText} from './actionText.ts';
import {blendOf} from './blendOf.ts';
import {recordedOf} from './recorded.ts';

/** Lines of reasons, as at Dial-in. */
const mostReasonLines = 4;

/** Whether anything was read or recorded that an answer could come from. */
export function hasReasons(profile: Profile): boolean {
	return (
		recordedOf(profile).kind !== 'none' ||
		blendOf(profile).blocks.some(({steps}) => steps.some(({isTaken}) => isTaken))
	);
}

/** How what Bass advises came about: old and new, then the reasons, in a few lines. */
export function bassWhyLines(profile: Profile, columns: number): ScreenLine[] {
	const state = recordedOf(profile);
	const result = blendOf(profile);
	const actions = state.kind === 'none' ? (result.wanted?.setting?.actions ?? []) : [];
	const reasons = state.kind === 'none' ? blendReasons(result) : recordedReasons(profile, state);
	const head = actions.map(action => actionText(profile, action)).join('; ') || 'Why this';
	return [
		...wrap(head, columns, '  ').map((text): ScreenLine => ({text, style: 'strong'})),
		...wrap(reasons.join(' '), columns, '  ')
			.slice(0, mostReasonLines)
			.map((text): ScreenLine => ({text})),
		{text: ''},
	];
}
