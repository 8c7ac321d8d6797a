import {listed, nameOf} from '../../profile/names.ts';
import type {Profile} from '../../profile/types.ts';
import {formatNumber, formatSigned} from '../../profile/units/decimalText.ts';
import type {ProfileBlend} from '../../study/hearing/profileBlend.ts';
import type {RecordedState} from '../../study/hearing/recordedState.ts';
import type {HeardReport} from '../../study/hearing/report.ts';
import type {ShownRow} from '../../study/hearing/shown.ts';
import {recordedStateLines} from '../bass/recordedState.ts';
import {entryValue} from '../entryValue.ts';
import {sentenceOf} from '../said/said.ts';
import {type Say, sayIn} from '../said/say.ts';
import {wrap} from '../wrap.ts';
import {playingLines, seatLines} from './tables.ts';

/** What `hear` shows. */
export type HeardText = HeardReport & {readonly isTaken: boolean};

/** Everything that was heard, as lines. */
export function heardLines(profile: Profile, heard: HeardText, width: number): string[] {
	const say = sayIn(profile, profile.lengthUnit);
	return [
		...heard.files.flatMap(file => [
			...wrap(
				`${file.name}: ${formatNumber(file.seconds, 0)} s, ${formatNumber(file.sampleRateHz / 1000, 1)} kHz, ${file.playings === 1 ? '1 playing' : `${file.playings} playings`}`,
				width,
			),
			...file.findings.flatMap(each => wrap(sentenceOf(each, say), width, '  ')),
		]),
		...(heard.rows.length > 0 ? ['', ...playingLines(profile, heard.rows, say, width)] : []),
		...heard.rounds.flatMap(round => ['', ...seatLines(profile, round, heard.findings, say, width)]),
		...allFindingLines(heard, say, width),
		...(heard.blend ? ['', ...blendLines(profile, heard.blend, width)] : []),
		...(isVerdict(heard.state) ? ['', ...recordedStateLines(profile, heard.state, width)] : []),
		'',
		...wrap(
			heard.isTaken
				? 'Taken into the profile.'
				: 'Nothing was changed. With --take this goes into the profile.',
			width,
		),
	];
}

/** Whether a state says more than the blend that was found. */
export const isVerdict = ({kind}: RecordedState) =>
	kind === 'kept' || kind === 'put back' || kind === 'to verify';

/** Everything that was found, each once, as whole sentences. */
export function allFindingLines(
	{rows, findings}: Pick<HeardReport, 'rows' | 'findings'>,
	say: Say,
	width: number,
): string[] {
	const ofRow = ({index, isUsed, playing, findings: own}: ShownRow) =>
		[...playing.findings, ...own].map(each =>
			// What spoils a playing that is not used spoils nothing else.
			isUsed ? sentenceOf(each, say) : `Playing ${index + 1}, spare: ${sentenceOf(each, say)}`,
		);
	const said = [...new Set([...findings.map(each => sentenceOf(each, say)), ...rows.flatMap(ofRow)])];
	return said.length === 0 ? [] : ['', ...said.flatMap(each => wrap(each, width, '- '))];
}

/** The blend that recordings ask for, with what to enter where. */
export function blendLines(profile: Profile, blend: ProfileBlend, width: number): string[] {
	const fronts = blend.fronts.map(
		({channel, gainDb}) => `${nameOf(profile, channel)} ${formatSigned(gainDb, 1)} dB`,
	);
	if (blend.groups.every(({addedMs, isTurned}) => addedMs === 0 && !isTurned))
		return wrap(
			'Blend: as it stands; no delay or polarity of the subs gains 0.3 dB through the crossover.',
			width,
		);
	return [
		...wrap(
			`Blend${blend.by === 'lfe' ? ' by one playing, all subs together' : ''}: ${formatSigned(blend.gainDb, 1)} dB through the crossover expected (${fronts.join(', ')}). To enter, then to verify by one more playing${blend.by === 'lfe' ? '; without that it is not kept' : ''}:`,
			width,
		),
		...blend.groups.flatMap(({subs, box, at, from, to, entry, addedMs, isTurned}) => {
			const shown = (value: number) => entryValue(profile, entry, value);
			const delay =
				addedMs === 0
					? `${entry} as it stands`
					: from === undefined || to === undefined
						? `${formatNumber(Math.abs(addedMs), 1)} ms ${addedMs > 0 ? 'later' : 'earlier'}`
						: `${entry} ${shown(to)} instead of ${shown(from)}`;
			const where =
				box === 'processor'
					? `output ${at} of the bass processor`
					: `${listed(at.split('+').map(id => nameOf(profile, id)))} in the receiver`;
			return wrap(
				`${listed(subs.map(id => nameOf(profile, id)))}, ${where}: ${delay}${isTurned ? ', inverted' : ''}${addedMs !== 0 && to === undefined ? '; Dial-in says with which entries' : ''}`,
				width,
				'- ',
			);
		}),
	];
}
