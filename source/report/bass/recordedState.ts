import type {Profile} from '../../profile/types.ts';
import type {RecordedState} from '../../study/hearing/recordedState.ts';
import {recordedSentence} from '../said/recorded.ts';
import {wrap} from '../wrap.ts';
import {oldEntryTexts} from './oldEntry.ts';

/** How far the blend by recording is, with the old entries where it was put back; nothing before anything was recorded. */
export function recordedStateLines(profile: Profile, state: RecordedState, width: number): string[] {
	if (state.kind === 'none') return [];
	const old = 'old' in state ? state.old : [];
	return [...wrap(recordedSentence(profile, state), width), ...oldEntryTexts(profile, old, width)];
}
