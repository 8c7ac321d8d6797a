import type {Profile} from '../../../profile/types.ts';
import {oldEntry} from '../../../report/bass/oldEntry.ts';
import {largeLines} from '../../../report/largeLines.ts';
import {
	recordedSentence,
	recordingCost,
	recordingOdds,
	recordingWayName,
} from '../../../report/said/recorded.ts';
import {wrap} from '../../../report/wrap.ts';
import {oddsOfRecording} from '../../../study/hearing/odds.ts';
import {type RecordedState, recordedState} from '../../../study/hearing/recordedState.ts';
import {canRecord, offeredRecording} from '../../../study/playing/offeredRecording.ts';
import {derived} from '../../derived.ts';
import type {ScreenLine} from '../../parts/lines.tsx';
import {situationOf} from '../dialIn/situation.ts';

type Put = (text: string, style?: ScreenLine['style'], sign?: string) => ScreenLine[];

/** How far the blend by recording is; computed anew only when recordings or settings change. */
export const recordedOf: (profile: Profile) => RecordedState = derived(
	{profile: (profile: Profile) => profile},
	({profile}) => recordedState(profile),
);

/** The way by recording as it is offered: what it takes at the reference seat. */
export function recordingWayLines(profile: Profile, put: Put): ScreenLine[] {
	const offered = offeredRecording(profile);
	if (!offered) return [];
	const {playings, changes, minutes} = offered;
	return put(`Enter  ${recordingWayName}: ${recordingCost(playings, changes, minutes)}.`, 'value');
}

/** What recording won in simulated rooms. */
export function recordingOddsLines(profile: Profile, put: Put): ScreenLine[] {
	if (!canRecord(profile)) return [];
	const odds = recordingOdds(
		oddsOfRecording,
		profile.channels.some(({id}) => id === 'FC'),
	);
	return put(`Recorded. ${odds}`, 'quiet', '· ');
}

/** What Enter does with what was recorded. */
export function afterRecording(profile: Profile): 'hear' | 'dialIn' | undefined {
	const {kind} = recordedOf(profile);
	if (kind === 'to enter' || kind === 'put back' || kind === 'kept')
		return situationOf(profile).kind === 'stale' ? 'dialIn' : undefined;
	if (kind === 'to verify') return situationOf(profile).kind === 'stale' ? 'dialIn' : 'hear';
	return undefined;
}

/** What was recorded, what it asks for, and what to do next; the old entries large where it was put back. */
export function recordedLines(profile: Profile, columns: number, isPlain: boolean): ScreenLine[] {
	const state = recordedOf(profile);
	if (state.kind === 'none') return [];
	const put: Put = (text, style, sign = '') =>
		wrap(text, columns, `  ${sign}`).map((line): ScreenLine => ({text: line, style}));
	const isGood = state.kind === 'kept' || state.kind === 'stands';
	const next = afterRecording(profile);
	return [
		...put(recordedSentence(profile, state), isGood ? 'good' : 'strong', isGood ? '✓ ' : ''),
		...(centreUnheard(profile, state)
			? put(
					'The centre was not recorded, so nobody knows what it does: the third size of the file holds it.',
					'doubt',
					'? ',
				)
			: []),
		...('old' in state && state.old.length > 0
			? [
					...put('Type the old entries in again:'),
					...state.old.flatMap(entry => {
						const {name, value} = oldEntry(profile, entry);
						const large = isPlain ? undefined : largeLines(value, columns - 4);
						return large
							? [...put(name), ...large.map((text): ScreenLine => ({text: `    ${text}`, style: 'value'}))]
							: put(`${name} ${value}`, 'value', '▸ ');
					}),
				]
			: []),
		...put(
			next === 'dialIn'
				? 'Enter goes to Dial-in, where it waits to be ticked; r records again.'
				: next === 'hear'
					? 'Enter records it.'
					: 'Enter goes on; r records again.',
		),
	];
}

/** Whether a change was found without the centre, which then may lose by it. */
function centreUnheard(profile: Profile, state: RecordedState): boolean {
	if (state.kind !== 'to enter' && state.kind !== 'to verify' && state.kind !== 'kept') return false;
	const isThere = profile.channels.some(({id}) => id === 'FC');
	return (
		isThere &&
		!profile.responses?.some(
			({recording, source, part}) => recording === state.recording.id && source === 'FC' && part === 'main',
		)
	);
}
