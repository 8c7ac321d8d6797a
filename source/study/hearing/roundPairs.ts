import {referenceSeat} from '../../profile/ask/seats.ts';
import type {Profile} from '../../profile/types.ts';
import {type CurveFigures, curveFigures, type LevelCurve, meanOver, smoothedCurve} from './curveFigures.ts';
import {type ProfileCurve, profileCurves} from './profileCurves.ts';

/** One line at one seat: its newest recording for the settings, and its newest with the settings in force. */
export type RoundPair = {
	readonly source: string;
	readonly seat: string;
	readonly before?: ProfileCurve;
	readonly after?: ProfileCurve;
};

/** Lines with everything that sounds when they play, the reference seat first, else in the order in which they were recorded. */
export function roundPairs(
	profile: Pick<Profile, 'date' | 'recordings' | 'responses' | 'seats'>,
): RoundPair[] {
	const pairs = new Map<string, RoundPair>();
	for (const curve of profileCurves(profile)) {
		if (curve.part !== 'all') continue;
		const {source, seat, round} = curve;
		const key = `${source} ${seat}`;
		const known = pairs.get(key) ?? {source, seat};
		// The newest stands last.
		pairs.set(key, {...known, [round === 'proof' ? 'after' : 'before']: curve});
	}

	const reference = referenceSeat(profile)?.id;
	return [...pairs.values()].sort((a, b) => Number(b.seat === reference) - Number(a.seat === reference));
}

/** What stands for the whole at the reference seat: the first line that was recorded before and after, else the first at all. */
export function referencePair(profile: Parameters<typeof roundPairs>[0]): RoundPair | undefined {
	const reference = referenceSeat(profile)?.id;
	const own = roundPairs(profile).filter(({seat}) => seat === reference);
	return own.find(({before, after}) => before && after) ?? own[0];
}

/**
Curves to lay over each other: smoothed, each less its mean over the frequencies that all of them hold, because recorder
and master volume may stand otherwise.

@param perOctave - Smoothing by 1/n octave.
*/
function levelled(curves: readonly LevelCurve[], perOctave: number): LevelCurve[] {
	const top = Math.min(...curves.map(({frequenciesHz}) => frequenciesHz.at(-1) ?? 0));
	return curves.map(curve => {
		const smooth = smoothedCurve(curve, perOctave);
		const mean = meanOver(smooth, [20, top]) ?? 0;
		return {...smooth, levelsDb: smooth.levelsDb.map(level => level - mean)};
	});
}

/** One recording of a pair, ready to show. */
export type LevelledRecording = Pick<
	ProfileCurve,
	'round' | 'date' | 'isMicrophoneKnown' | 'decaySeconds'
> & {
	/** Smoothed, levels less their mean. */
	readonly curve: LevelCurve;
	readonly figures: CurveFigures;
};

/** A line at a seat with what was recorded of it, before first. */
export type LevelledPair = {
	readonly source: string;
	readonly seat: string;
	readonly recorded: readonly LevelledRecording[];
};

/**
A pair with its figures, its curves laid over each other.

@param perOctave - Smoothing by 1/n octave.
*/
export function levelledPair({source, seat, before, after}: RoundPair, perOctave: number): LevelledPair {
	const both = [...(before ? [before] : []), ...(after ? [after] : [])];
	const curves = levelled(
		both.map(({curve}) => curve),
		perOctave,
	);
	return {
		source,
		seat,
		recorded: both.map(({curve, round, date, isMicrophoneKnown, decaySeconds}, index) => ({
			round,
			date,
			isMicrophoneKnown,
			...(decaySeconds !== undefined && {decaySeconds}),
			curve: curves[index]!,
			figures: curveFigures(curve, isMicrophoneKnown),
		})),
	};
}
