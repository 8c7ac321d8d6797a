import {fractionalSmoothing} from '../../science/signal/fractionalSmoothing.ts';

/** A level over frequency. */
export type LevelCurve = {readonly frequenciesHz: Float64Array; readonly levelsDb: Float64Array};

/** A place that stands out of a curve. */
export type CurveExtreme = {readonly hertz: number; readonly aboveDb: number};

/** What a curve says in numbers. */
export type CurveFigures = {
	/** Mean level from 200 Hz to 2 kHz, or over all where it does not reach there, dB. */
	readonly meanDb: number;
	/** Deepest dips and highest peaks of the bass against its mean, at most three each. */
	readonly dips: readonly CurveExtreme[];
	readonly peaks: readonly CurveExtreme[];
	/** Only where the microphone is known: standard deviation from the mean, fall per octave, and where the bass is 6 dB down. */
	readonly deviationDb?: number;
	readonly tiltDbPerOctave?: number;
	readonly lowLimitHertz?: number;
};

/** Bass is looked at in sixths of an octave: what is narrower is not heard as a dip. */
const bassPerOctave = 6;
const bassHertz = [20, 200] as const;
const middleHertz = [200, 2000] as const;
const standsOutDb = 3;

/** Mean level over a band, dB; undefined where the curve has no point in it. */
export const meanOver = ({frequenciesHz, levelsDb}: LevelCurve, [from, to]: readonly [number, number]) => {
	let [sum, count] = [0, 0];
	for (const [index, hertz] of frequenciesHz.entries()) {
		if (hertz < from || hertz > to) continue;
		sum += levelsDb[index]!;
		count += 1;
	}

	return count > 0 ? sum / count : undefined;
};

/** A curve smoothed by fractions of an octave. */
export function smoothedCurve({frequenciesHz, levelsDb}: LevelCurve, perOctave: number): LevelCurve {
	return {frequenciesHz, levelsDb: fractionalSmoothing(frequenciesHz, levelsDb, perOctave)};
}

/**
Figures of a curve.

@param isMicrophoneKnown - Where not, what the recorder's own colour would touch is left out: deviation, tilt, low limit.
*/
export function curveFigures(curve: LevelCurve, isMicrophoneKnown: boolean): CurveFigures {
	const bass = smoothedCurve(curve, bassPerOctave);
	const all = [0, Number.POSITIVE_INFINITY] as const;
	const meanDb = meanOver(curve, middleHertz) ?? meanOver(curve, all) ?? 0;
	const bassMean = meanOver(bass, bassHertz);
	const found = bassMean === undefined ? {dips: [], peaks: []} : standingOut(bass, bassHertz, bassMean);
	if (!isMicrophoneKnown) return {meanDb, ...found};
	// A dip of the room is not the end of the bass: whole octaves tell the two apart.
	const lowLimitHertz = lowLimit(smoothedCurve(curve, 1), bassMean);
	return {
		meanDb,
		...found,
		...deviationAndTilt(smoothedCurve(curve, 3), meanDb),
		...(lowLimitHertz !== undefined && {lowLimitHertz}),
	};
}

/**
Deepest dips and highest peaks of a curve within a band against a mean: at most three each, the worst first.

@param curve - Smoothed already.
@param band - From and to, hertz; its lowest tenth is left out, where a curve only begins.
*/
export function standingOut(
	{frequenciesHz, levelsDb}: LevelCurve,
	[fromHertz, toHertz]: readonly [number, number],
	meanDb: number,
): {readonly dips: CurveExtreme[]; readonly peaks: CurveExtreme[]} {
	const dips: CurveExtreme[] = [];
	const peaks: CurveExtreme[] = [];
	for (let index = 1; index < levelsDb.length - 1; index += 1) {
		const hertz = frequenciesHz[index]!;
		if (hertz < fromHertz * 1.1 || hertz > toHertz) continue;
		const [before, here, after] = [levelsDb[index - 1]!, levelsDb[index]!, levelsDb[index + 1]!];
		const aboveDb = here - meanDb;
		if (here < before && here <= after && aboveDb < -standsOutDb) dips.push({hertz, aboveDb});
		if (here > before && here >= after && aboveDb > standsOutDb) peaks.push({hertz, aboveDb});
	}

	return {
		dips: dips.sort((a, b) => a.aboveDb - b.aboveDb).slice(0, 3),
		peaks: peaks.sort((a, b) => b.aboveDb - a.aboveDb).slice(0, 3),
	};
}

function deviationAndTilt({frequenciesHz, levelsDb}: LevelCurve, meanDb: number) {
	let [count, squares, x, y, xx, xy] = [0, 0, 0, 0, 0, 0];
	for (const [index, hertz] of frequenciesHz.entries()) {
		if (hertz < 200 || hertz > 10_000) continue;
		const octave = Math.log2(hertz / 1000);
		const level = levelsDb[index]! - meanDb;
		count += 1;
		squares += level * level;
		x += octave;
		y += level;
		xx += octave * octave;
		xy += octave * level;
	}

	const spread = count * xx - x * x;
	if (count < 3 || !(spread > 0)) return {};
	return {
		deviationDb: Math.sqrt(squares / count - (y / count) ** 2),
		tiltDbPerOctave: (count * xy - x * y) / spread,
	};
}

/** Lowest frequency from which on the bass stays within 6 dB of its mean. */
function lowLimit({frequenciesHz, levelsDb}: LevelCurve, meanDb: number | undefined): number | undefined {
	if (meanDb === undefined) return undefined;
	let limit: number | undefined;
	for (let index = frequenciesHz.length - 1; index >= 0; index -= 1) {
		const hertz = frequenciesHz[index]!;
		if (hertz > 100) continue;
		if (levelsDb[index]! < meanDb - 6) break;
		limit = hertz;
	}

	return limit;
}

/** Mean size of the difference of two curves over a band, levels taken off, dB: how unlike they are. */
export function curveDistanceDb(
	one: LevelCurve,
	other: LevelCurve,
	[from, to]: readonly [number, number],
): number {
	const differences: number[] = [];
	for (const [index, hertz] of one.frequenciesHz.entries()) {
		if (hertz < from || hertz > to) continue;
		const level = levelAt(other, hertz);
		if (level !== undefined) differences.push(one.levelsDb[index]! - level);
	}

	const mean = differences.reduce((sum, value) => sum + value, 0) / Math.max(1, differences.length);
	return (
		differences.reduce((sum, value) => sum + Math.abs(value - mean), 0) / Math.max(1, differences.length)
	);
}

function levelAt({frequenciesHz, levelsDb}: LevelCurve, hertz: number): number | undefined {
	const last = frequenciesHz.length - 1;
	if (last < 0 || hertz < frequenciesHz[0]! || hertz > frequenciesHz[last]!) return undefined;
	const next = Math.max(
		1,
		frequenciesHz.findIndex(value => value >= hertz),
	);
	const [low, high] = [frequenciesHz[next - 1]!, frequenciesHz[next]!];
	const share = high > low ? Math.log(hertz / low) / Math.log(high / low) : 0;
	return levelsDb[next - 1]! + share * (levelsDb[next]! - levelsDb[next - 1]!);
}
