import {type LevelCurve, meanOver, smoothedCurve, standingOut} from '../../hearing/curveFigures.ts';
import type {ResponseChange} from './profileDiff.ts';

/** What changed in the bass of a response. */
export type BassChange = Pick<ResponseChange, 'dip' | 'peak' | 'mostChanged'>;

/** Below this the room makes dips and peaks that move with what stands in it, hertz. */
const bassHertz = [20, 300] as const;
/** What is narrower than a sixth of an octave is not heard as a dip. */
const perOctave = 6;

/** Deepest dip and highest peak of a curve below 300 Hz; null where nothing stands out by 3 dB, undefined where it does not reach there. */
export function worstOfBass(curve: LevelCurve) {
	const smooth = smoothedCurve(curve, perOctave);
	const mean = meanOver(smooth, bassHertz);
	if (mean === undefined) return undefined;
	const {dips, peaks} = standingOut(smooth, bassHertz, mean);
	return {dip: dips[0] ?? null, peak: peaks[0] ?? null};
}

/**
Dips and peaks of the bass in two curves, and where they differ most, each curve's mean taken off.

@param isColourKnown - Whether no recorder's own colour is in them; where it may be, only what stands out is told.
*/
export function bassChange(before: LevelCurve, after: LevelCurve, isColourKnown: boolean): BassChange {
	const [then, now] = [worstOfBass(before), worstOfBass(after)];
	if (!then || !now) return {};
	const mostChanged = isColourKnown ? greatestChange(before, after) : undefined;
	return {
		...((then.dip ?? now.dip) && {dip: {before: then.dip, after: now.dip}}),
		...((then.peak ?? now.peak) && {peak: {before: then.peak, after: now.peak}}),
		...(mostChanged && {mostChanged}),
	};
}

function greatestChange(before: LevelCurve, after: LevelCurve): BassChange['mostChanged'] {
	const count = Math.min(before.frequenciesHz.length, after.frequenciesHz.length);
	const frequenciesHz = after.frequenciesHz.slice(0, count);
	const [then, now] = [smoothedCurve(before, perOctave), smoothedCurve(after, perOctave)];
	const levelsDb = frequenciesHz.map((_, index) => now.levelsDb[index]! - then.levelsDb[index]!);
	const mean = meanOver({frequenciesHz, levelsDb}, bassHertz);
	if (mean === undefined) return undefined;
	let most = {hertz: 0, changeDb: 0};
	for (const [index, hertz] of frequenciesHz.entries()) {
		if (hertz < bassHertz[0] || hertz > bassHertz[1]) continue;
		const changeDb = levelsDb[index]! - mean;
		if (Math.abs(changeDb) > Math.abs(most.changeDb)) most = {hertz, changeDb};
	}

	return most.hertz > 0 ? most : undefined;
}
