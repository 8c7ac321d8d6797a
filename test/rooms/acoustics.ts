import FFT from 'fft.js';
import type {Gear} from './gear.ts';
import type {Box, Point} from './physics/box.ts';
import {butterworthHigh, butterworthLow, closedBox, twoWay} from './physics/filters.ts';
import {product, type Spectrum} from './physics/spectrum.ts';
import {octaveBlend, pathsOf, responseAt} from './physics/transfer.ts';
import {type MainId, mainIds, type Places, type SourceId} from './places.ts';

/** Grid of the bass, Hz: noise below 400 Hz is summed over it, and coherently. */
export const bassHertz = Float64Array.from({length: 386}, (_, index) => 15 + index);

/** Powers above the bass on an even grid, for noise of one speaker. */
export type TrebleGrid = {readonly hertz: Float64Array; readonly power: Float64Array};

/** What is heard of every speaker and sub at any point, with its box; without receiver and processor. */
export type Acoustics = {
	/** Complex response at the grid of the bass. */
	bass(source: SourceId, point: Point): Spectrum;
	/** Complex response at any frequencies up to 400 Hz. */
	at(source: SourceId, point: Point, frequencies: ArrayLike<number>): Spectrum;
	/** |H|² between 300 and 3000 Hz. */
	treble(source: MainId, point: Point): TrebleGrid;
};

const isMain = (id: SourceId): id is MainId => (mainIds as readonly string[]).includes(id);

/** The speaker's or sub's own response. */
function ownResponse(gear: Gear, id: SourceId, frequencies: ArrayLike<number>): Spectrum {
	if (isMain(id)) {
		const speaker = gear.mains[id];
		const box = closedBox(frequencies, speaker.lowHertz, speaker.q);
		return speaker.twoWay ? product(box, twoWay(frequencies, speaker.twoWay)) : box;
	}

	const sub = gear.subs[id];
	return product(
		butterworthHigh(frequencies, sub.lowHertz, 4),
		butterworthLow(frequencies, sub.upperHertz, 2),
	);
}

/** Each source and point is worked out once, when first asked for. */
export function acousticsOf(box: Box, places: Places, gear: Gear): Acoustics {
	const known = new Map<string, unknown>();
	const once = <T>(kind: string, source: SourceId, point: Point, compute: () => T): T => {
		const key = `${kind} ${source} ${point.join(' ')}`;
		if (!known.has(key)) known.set(key, compute());
		return known.get(key) as T;
	};
	const source = (id: SourceId) => ({
		at: places.at[id],
		...(isMain(id) && gear.mains[id].dipoleAxis && {dipoleAxis: gear.mains[id].dipoleAxis}),
	});
	// What comes 38 dB below the start no longer changes a level by a tenth of a decibel.
	const shorter = (share: number): Box => ({
		...box,
		longestSeconds: Math.max(0.05, box.longestSeconds * share),
	});
	const paths = (id: SourceId, point: Point) =>
		once('paths', id, point, () =>
			pathsOf(shorter(0.85), source(id), point, {rate: 4000, lowestHertz: 15, highestHertz: 400}),
		);
	const at = (id: SourceId, point: Point, frequencies: ArrayLike<number>) =>
		product(responseAt(paths(id, point), frequencies), ownResponse(gear, id, frequencies));
	return {
		at,
		bass: (id, point) => once('bass', id, point, () => at(id, point, bassHertz)),
		treble: (id, point) =>
			once('treble', id, point, () => {
				const rate = 16_000;
				const {impulses} = pathsOf(shorter(0.55), source(id), point, {
					rate,
					lowestHertz: 300,
					highestHertz: 3000,
				});
				return powers(gear, id, impulses, rate);
			}),
	};
}

function powers(
	gear: Gear,
	id: MainId,
	impulses: ReadonlyArray<Float64Array | undefined>,
	rate: number,
): TrebleGrid {
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
	const first = Math.ceil((300 * size) / rate);
	const hertz = Float64Array.from(
		{length: Math.floor((3000 * size) / rate) - first},
		(_, index) => ((first + index) * rate) / size,
	);
	const own = ownResponse(gear, id, hertz);
	const power = hertz.map((frequency, index) => {
		const {below, above, share} = octaveBlend(frequency);
		const low = spectra.get(impulses[below]!)!;
		const high = spectra.get(impulses[above]!)!;
		const bin = 2 * (first + index);
		const re = low[bin]! + share * (high[bin]! - low[bin]!);
		const im = low[bin + 1]! + share * (high[bin + 1]! - low[bin + 1]!);
		return (re * re + im * im) * (own.re[index]! ** 2 + own.im[index]! ** 2);
	});
	return {hertz, power};
}
