import type {BoxesState} from './boxes.ts';
import type {Point} from './physics/box.ts';
import {butterworthHigh, linkwitzRileyLow, weightingC} from './physics/filters.ts';
import {addTo, delayed, emptySpectrum, product, type Spectrum} from './physics/spectrum.ts';
import {type MainId, mainIds, type SourceId, type SubId, subIds} from './places.ts';
import {bassHertz} from './roomSound.ts';
import type {World} from './world.ts';

/** What is played, into which channel, and what is left on. */
export type Playing = {
	/** Channel that the signal goes into; several get noises of their own. */
	readonly into: readonly (MainId | 'LFE1')[];
	/** Speakers and subs that can sound; the others are unplugged or off. */
	readonly on: readonly SourceId[];
	/** Delay added to all subs that are on, beyond the settings, ms. */
	readonly addedDelayMs?: number;
	/** Their polarity turned against the settings. */
	readonly turned?: boolean;
	/** Delay and turning concern one sub only. */
	readonly movedOnly?: SubId;
};

/** What is changed in one line for one reading, beyond the settings. */
export type Added = {readonly delayMs: number; readonly turned: boolean};
const nothingAdded: Added = {delayMs: 0, turned: false};

/** Output of the processor that a sub hangs on. */
export const outputOf = (sub: SubId): string => (sub === 'sub1' ? 'A' : 'B');

export const isMainId = (id: string): id is MainId => (mainIds as readonly string[]).includes(id);
export const isSubId = (id: string): id is SubId => (subIds as readonly string[]).includes(id);

/**
Electronics from a channel to a speaker or sub: gain, delay, polarity, bass management. 1 stands for the source's own level
with everything at 0. `undefined` where nothing of the channel reaches it.

Bass is taken from a channel before its trim and delay, so that these concern its speaker alone.
*/
export function electronics(
	world: World,
	boxes: BoxesState,
	into: MainId | 'LFE1',
	source: SourceId,
	frequencies: ArrayLike<number>,
	added: Added = nothingAdded,
): Spectrum | undefined {
	const level = (db: number, isInverted: boolean) =>
		(isInverted ? -1 : 1) * 10 ** ((db + boxes.masterDb) / 20);
	if (isMainId(source)) {
		const channel = boxes.channels[source];
		if (into !== source) return undefined;
		const line = delayed(
			frequencies,
			channel?.delayMs ?? 0,
			level(
				world.knobs.mainsDb + world.gear.mains[source].levelDb + (channel?.trimDb ?? 0),
				channel?.isInverted ?? false,
			),
		);
		return typeof channel?.crossoverHertz === 'number'
			? product(line, butterworthHigh(frequencies, channel.crossoverHertz, 2))
			: line;
	}

	const crossover = into === 'LFE1' ? boxes.lfeLowPassHertz : boxes.channels[into]?.crossoverHertz;
	if (typeof crossover !== 'number') return undefined;
	const lfe = boxes.channels.LFE1;
	const output = boxes.outputs[outputOf(source)];
	const truth = world.gear.subs[source];
	const line = delayed(
		frequencies,
		(lfe?.delayMs ?? 0) +
			(output?.delayMs ?? 0) +
			world.gear.processorLatencyMs +
			truth.unstatedLatencyMs +
			added.delayMs,
		level(
			world.knobs.subsDb + truth.levelDb + (lfe?.trimDb ?? 0) + (output?.gainDb ?? 0),
			[lfe?.isInverted, output?.isInverted, truth.isTurned, added.turned].filter(Boolean).length % 2 === 1,
		),
	);
	return product(line, linkwitzRileyLow(frequencies, crossover));
}

/** What arrives of one source, by channel played into; at the bass grid or at any frequencies up to 500 Hz. */
export function arriving(
	world: World,
	boxes: BoxesState,
	into: MainId | 'LFE1',
	source: SourceId,
	point: Point,
	frequencies: ArrayLike<number> = bassHertz,
	added: Added = nothingAdded,
): Spectrum | undefined {
	const line = electronics(world, boxes, into, source, frequencies, added);
	if (!line) return undefined;
	const room =
		frequencies === bassHertz
			? world.acoustics.bass(source, point)
			: world.acoustics.at(source, point, frequencies);
	return product(line, room);
}

/** All that is on, summed with its phases, for one channel played into. */
export function soundOf(
	world: World,
	boxes: BoxesState,
	playing: Playing,
	into: MainId | 'LFE1',
	point: Point,
	frequencies: ArrayLike<number> = bassHertz,
): Spectrum {
	const sum = emptySpectrum(frequencies.length);
	for (const source of playing.on) {
		const isMoved = isSubId(source) && (playing.movedOnly ?? source) === source;
		const part = arriving(
			world,
			boxes,
			into,
			source,
			point,
			frequencies,
			isMoved ? {delayMs: playing.addedDelayMs ?? 0, turned: playing.turned ?? false} : nothingAdded,
		);
		if (part) addTo(sum, part);
	}

	return sum;
}

export type Weighting = 'C' | 'Z';
const weight = (weighting: Weighting, hertz: number) => (weighting === 'C' ? weightingC(hertz) ** 2 : 1);

/** True level of a tone at a point, dB. */
export function toneLevel(
	world: World,
	boxes: BoxesState,
	playing: Playing,
	hertz: number,
	point: Point,
	weighting: Weighting = 'C',
): number {
	let energy = 0;
	for (const into of playing.into) {
		const {re, im} = soundOf(world, boxes, playing, into, point, [hertz]);
		energy += re[0]! ** 2 + im[0]! ** 2;
	}

	return 10 * Math.log10(energy * weight(weighting, hertz));
}

/**
True level of pink noise of the same rms in any band, dB. Bands end below 500 Hz, where all sources of a channel are
summed with their phases, or begin above 300 Hz, where only the channel's own speaker counts.
*/
export function noiseLevel(
	world: World,
	boxes: BoxesState,
	playing: Playing,
	[from, to]: readonly [fromHertz: number, toHertz: number],
	point: Point,
	weighting: Weighting = 'C',
): number {
	const isBass = to <= 500;
	if (!isBass && from < 300)
		throw new RangeError(`no noise from ${from} to ${to} Hz here: to 500 or from 300`);
	let energy = 0;
	let norm = 0;
	for (const into of playing.into) {
		if (isBass) {
			const {re, im} = soundOf(world, boxes, playing, into, point);
			norm = meanOver(bassHertz, from, to, () => 1);
			energy += meanOver(
				bassHertz,
				from,
				to,
				index => (re[index]! ** 2 + im[index]! ** 2) * weight(weighting, bassHertz[index]!),
			);
		} else if (into !== 'LFE1' && playing.on.includes(into)) {
			const {hertz, power} = world.acoustics.treble(into, point);
			const line = electronics(world, boxes, into, into, hertz)!;
			norm = meanOver(hertz, from, to, () => 1);
			energy += meanOver(
				hertz,
				from,
				to,
				index =>
					power[index]! * (line.re[index]! ** 2 + line.im[index]! ** 2) * weight(weighting, hertz[index]!),
			);
		}
	}

	return 10 * Math.log10(energy / norm);
}

/** Sum over a band with the 1/f of pink noise; bins at the ends count by the share inside. */
function meanOver(grid: Float64Array, from: number, to: number, value: (index: number) => number): number {
	const step = grid[1]! - grid[0]!;
	let sum = 0;
	for (let index = 0; index < grid.length; index++) {
		const hertz = grid[index]!;
		const inside = Math.min(hertz + step / 2, to) - Math.max(hertz - step / 2, from);
		if (inside > 0) sum += (Math.min(1, inside / step) * value(index)) / hertz;
	}

	return sum;
}
