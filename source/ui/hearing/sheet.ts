import {referenceSeat} from '../../profile/ask/seats.ts';
import {isLfe} from '../../profile/channels.ts';
import {nameOf} from '../../profile/names.ts';
import type {Profile} from '../../profile/types.ts';
import {formatNumber} from '../../profile/units/decimalText.ts';
import {roundSheetLines} from '../../report/hearing/roundSheet.ts';
import {onePlayingOdds} from '../../report/said/recorded.ts';
import {wrap} from '../../report/wrap.ts';
import {oddsOfRecording} from '../../study/hearing/odds.ts';
import {recordedState} from '../../study/hearing/recordedState.ts';
import type {RoundSize} from '../../study/hearing/roundCode.ts';
import {minutesFor, plannedPlayings, subGroups} from '../../study/hearing/visit.ts';
import {roundFile} from '../../study/playing/roundFile.ts';
import type {ScreenLine} from '../parts/lines.tsx';
import type {HearingState} from './state.ts';

const sizes: readonly RoundSize[] = ['two', 'all', 'bass'];
const sizeNames: Readonly<Record<RoundSize, string>> = {
	two: 'Front left and right: any stick, television or streamer plays it',
	all: 'All channels that a multichannel player reaches',
	bass: 'Fronts and low frequency effects to 300 Hz, with the subs changed',
};

const text = (line: string, style?: ScreenLine['style']): ScreenLine => ({text: line, style});

/** What to play and how; the sizes with their length, the chosen one marked. */
export function sheetLines(profile: Profile, {size, round}: HearingState, columns: number): ScreenLine[] {
	// What is dialled in is played once as it stands: to verify a blend, or to prove.
	const isOnce = round === 'proof' || recordedState(profile).kind === 'to verify';
	const groups = isOnce ? [] : subGroups(profile);
	const file = roundFile(profile, size);
	const one = plannedPlayings([referenceSeat(profile).id], groups);
	const choices = sizes.map((each, index): ScreenLine => {
		const {round} = roundFile(profile, each);
		const label = `${index + 1}  ${sizeNames[each]}: ${formatNumber(round.seconds, 0)} s`;
		return each === size ? text(`› ${label}`, 'value') : text(`  ${label}`);
	});
	const visit = {file, loop: 'round-loudness.wav', groups, playings: one};
	const others = profile.seats.length - 1;
	return [
		text('Play one file, record it at the seat', 'strong'),
		...choices,
		...wrap(
			`${one.length === 1 ? 'One playing' : `${one.length} playings`} at ${nameOf(profile, referenceSeat(profile).id)}, about ${minutesFor(one.length, file.round.seconds)} minutes. Start low; ears away from speakers that play.`,
			columns,
			'  ',
		).map(line => text(line, 'doubt')),
		...(file.round.channels.some(isLfe) && !isOnce
			? wrap(onePlayingOdds(oddsOfRecording, file.round.channels.includes('FC')), columns, '  ').map(line =>
					text(line, 'quiet'),
				)
			: []),
		...(isOnce ? [text('  As it stands now, nothing touched: once is enough.', 'quiet')] : []),
		...(others > 0 && !isOnce
			? wrap(
					`Further seats: ${minutesFor(one.length, file.round.seconds)} minutes each, and the blend then counts them too.`,
					columns,
					'  ',
				).map(line => text(line, 'quiet'))
			: []),
		text(''),
		...roundSheetLines(
			profile,
			visit,
			undefined,
			columns,
			'Then Enter: recordings are taken on the next page.',
		).map(line => text(line)),
	];
}
