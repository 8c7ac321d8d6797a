import {useIsScreenReaderEnabled} from 'ink';
import {nameOf} from '../../../profile/names.ts';
import type {Profile} from '../../../profile/types.ts';
import {curveLines} from '../../../report/hearing/curves.ts';
import {levelledPair, roundPairs} from '../../../study/hearing/roundPairs.ts';
import {Lines, type ScreenLine} from '../../parts/lines.tsx';

/** Sixths of an octave show what the room does. */
const perOctave = 6;
/** Lines of figures under the drawing, and its title. */
const wordLines = 9;
const leastRows = 8;
const mostRows = 20;

/** How many lines at seats were recorded. */
export const responseCount = (profile: Profile): number => roundPairs(profile).length;

/** One recorded line at one seat, before and after, drawn or in words, with its figures. */
export function responseLines(
	profile: Profile,
	at: number,
	{
		columns,
		height,
		isInWords,
	}: {readonly columns: number; readonly height: number; readonly isInWords: boolean},
): ScreenLine[] {
	const pairs = roundPairs(profile);
	const pair = pairs[Math.min(at, pairs.length - 1)];
	if (!pair) return [{text: 'No response was recorded.'}];
	const {source, seat, recorded} = levelledPair(pair, perOctave);
	const title = `${nameOf(profile, source)} at ${nameOf(profile, seat)}, ${Math.min(at, pairs.length - 1) + 1} of ${pairs.length}`;
	const curves = recorded.map(({round, date, ...each}) => ({
		...each,
		title: `${round === 'proof' ? 'after' : 'before'}, ${date}`,
	}));
	const rows = Math.max(leastRows, Math.min(mostRows, height - wordLines));
	return [
		{text: title, style: 'strong'},
		...curveLines(curves, {width: columns, rows, isInWords}).map((text): ScreenLine => ({text})),
	];
}

type Props = {
	readonly profile: Profile;
	readonly at: number;
	readonly columns: number;
	readonly height: number;
};

/** The recorded responses, one line of the system at a time. */
export function ResponseView({profile, at, columns, height}: Props) {
	const isInWords = useIsScreenReaderEnabled();
	return <Lines lines={responseLines(profile, at, {columns, height, isInWords})} columns={columns} />;
}
