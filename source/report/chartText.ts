import {formatNumber} from '../profile/units/decimalText.ts';
import type {ChartOptions, ChartSeries} from './chartData.ts';

/** Nominal centres of octave bands, hertz. @see IEC 61260-1:2014, Table E.1. */
const octaveCentresHz = [16, 31.5, 63, 125, 250, 500, 1000, 2000, 4000, 8000, 16_000];

/** A chart in words: for each series its level at octave centres, its highest and its lowest point. */
export function chartText({series, fromHz, toHz, marks = []}: ChartOptions): string[] {
	if (series.length === 0) return ['No curves.'];
	return [
		...series.map(one => seriesText(one, fromHz, toHz)),
		...marks.map(({label, frequencyHz}) => `Marked at ${formatHertz(frequencyHz)}: ${label}.`),
	];
}

function seriesText({name, points}: ChartSeries, fromHz: number, toHz: number): string {
	const inside = points.filter(
		({frequencyHz, levelDb}) => frequencyHz >= fromHz && frequencyHz <= toHz && Number.isFinite(levelDb),
	);
	if (inside.length === 0) return `${name}: no values from ${formatHertz(fromHz)} to ${formatHertz(toHz)}.`;
	const sorted = inside.toSorted((a, b) => a.levelDb - b.levelDb);
	const low = sorted[0]!;
	const high = sorted.at(-1)!;
	const centres = octaveCentresHz.flatMap(centre => {
		const level = levelAt(inside, centre);
		return level === undefined ? [] : [`${formatNumber(level, 1)} dB at ${formatHertz(centre)}`];
	});
	const ends = `highest ${formatNumber(high.levelDb, 1)} dB at ${formatHertz(high.frequencyHz)}, lowest ${formatNumber(low.levelDb, 1)} dB at ${formatHertz(low.frequencyHz)}`;
	return `${name}: ${[...centres, ends].join(', ')}.`;
}

/** Level between the two nearest points, linear over the logarithm of frequency; nothing outside. */
function levelAt(points: ChartSeries['points'], frequencyHz: number): number | undefined {
	const index = points.findIndex(point => point.frequencyHz >= frequencyHz);
	const after = points[index];
	if (!after) return undefined;
	if (after.frequencyHz === frequencyHz) return after.levelDb;
	const before = points[index - 1];
	if (!before) return undefined;
	const share = Math.log(frequencyHz / before.frequencyHz) / Math.log(after.frequencyHz / before.frequencyHz);
	return before.levelDb + share * (after.levelDb - before.levelDb);
}

function formatHertz(frequencyHz: number): string {
	if (frequencyHz >= 1000) return `${Number((frequencyHz / 1000).toFixed(1))} kHz`;
	return `${Number(frequencyHz.toFixed(frequencyHz < 100 ? 1 : 0))} Hz`;
}
