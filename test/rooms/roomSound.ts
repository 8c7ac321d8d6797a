import FFT from 'fft.js';
import type {Box, Point} from './physics/box.ts';
import type {Spectrum} from './physics/spectrum.ts';
import {octaveBlend, type Paths, pathsOf, responseAt} from './physics/transfer.ts';
import type {Places, SourceId} from './places.ts';

/** Grid of the bass, Hz: noise below 500 Hz is summed over it, and coherently. */
export const bassHertz = Float64Array.from({length: 486}, (_, index) => 15 + index);

/** Powers above the bass on an even grid, for noise of one speaker. */
export type TrebleGrid = {readonly hertz: Float64Array; readonly power: Float64Array};

/** What a room makes of a source at a point, worked out once for each, whatever speaker stands there. */
export type RoomSound = {
	bass(source: SourceId, point: Point): Spectrum;
	at(source: SourceId, point: Point, frequencies: ArrayLike<number>): Spectrum;
	/** |H|² on an even grid within the band, which begins at 250 Hz or above. */
	treble(source: SourceId, point: Point, band: readonly [fromHertz: number, toHertz: number]): TrebleGrid;
};

export function roomSoundOf(box: Box, places: Places): RoomSound {
	const known = new Map<string, unknown>();
	const once = <T>(kind: string, source: SourceId, point: Point, compute: () => T): T => {
		const key = `${kind} ${source} ${point.join(' ')}`;
		if (!known.has(key)) known.set(key, compute());
		return known.get(key) as T;
	};
	// What comes 38 dB below the start no longer changes a level by a tenth of a decibel; for powers 25 dB are enough.
	const shorter = (share: number): Box => ({
		...box,
		longestSeconds: Math.max(0.05, box.longestSeconds * share),
	});
	const paths = (id: SourceId, point: Point) =>
		once('paths', id, point, () =>
			pathsOf(shorter(0.85), {at: places.at[id]}, point, {rate: 4000, lowestHertz: 15, highestHertz: 500}),
		);
	const at = (id: SourceId, point: Point, frequencies: ArrayLike<number>) =>
		responseAt(paths(id, point), frequencies);
	return {
		at,
		bass: (id, point) => once('bass', id, point, () => at(id, point, bassHertz)),
		treble: (id, point, band) =>
			once(`treble ${band.join(' ')}`, id, point, () => {
				const rate = 5.4 * band[1];
				const [lowestHertz, highestHertz] = band;
				const found = pathsOf(shorter(0.55), {at: places.at[id]}, point, {rate, lowestHertz, highestHertz});
				return powers(found, band);
			}),
	};
}

function powers({impulses, rate}: Paths, [from, to]: readonly [number, number]): TrebleGrid {
	const size = 2 ** Math.ceil(Math.log2(impulses.find(one => one)!.length));
	const fft = new FFT(size);
	const spectra = new Map(
		[...new Set(impulses)].flatMap(one => {
			if (!one) return [];
			const padded = new Array<number>(size).fill(0);
			for (const [index, value] of one.entries()) padded[index] = value;
			const out = fft.createComplexArray() as number[];
			fft.realTransform(out, padded);
			return [[one, out] as const];
		}),
	);
	const first = Math.ceil((from * size) / rate);
	const hertz = Float64Array.from(
		{length: Math.floor((to * size) / rate) - first},
		(_, index) => ((first + index) * rate) / size,
	);
	const power = hertz.map((frequency, index) => {
		const {below, above, share} = octaveBlend(frequency);
		const low = spectra.get(impulses[below]!)!;
		const high = spectra.get(impulses[above]!)!;
		const bin = 2 * (first + index);
		const re = low[bin]! + share * (high[bin]! - low[bin]!);
		const im = low[bin + 1]! + share * (high[bin + 1]! - low[bin + 1]!);
		return re * re + im * im;
	});
	return {hertz, power};
}
