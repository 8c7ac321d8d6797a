import {type BandGain, type BandPower, energyBefore, powerSplitter} from '../../science/signal/bandPower.ts';
import {
	type FrequencyBand,
	nominalOctave,
	octaveGain,
	roomOctaves,
} from '../../science/signal/octaveBands.ts';
import type {Impulse} from './impulses.ts';

/** How a room dies away in one octave; what the range does not allow is left out. */
export type OctaveDecay = {
	/** Nominal middle of the octave. */
	readonly hertz: number;
	/** From the strongest to the noise, dB. */
	readonly rangeDb: number;
	/** Each extrapolated to 60 dB, seconds. */
	readonly edtSeconds?: number;
	readonly t20Seconds?: number;
	readonly t30Seconds?: number;
};

/** Ranges that each figure needs, dB. @see ISO 3382-2:2008, 5.3 and Annex: at least 10 dB above the noise at its lower end. */
const rangeFor = {edt: 25, t20: 35, t30: 45} as const;
/** Steps of the decay curve, seconds: 5 ms are 1.5 dB of a decay of 0.2 s. */
const blockSeconds = 0.005;
/** Bandwidth times decay time below which the filter is heard, not the room; for filters without delay. @see ISO 3382-2, 7.3 */
const leastProduct = 4;

/**
Decay in every octave from 63 Hz to 8 kHz.

@param split - The impulse response's power by band.
@see ISO 3382-1:2009, 5.3.3 and ISO 3382-2:2008: backward integration, noise compensated.
*/
export function octaveDecays(
	impulse: Impulse,
	arrivalMs: number,
	split = splitImpulse(impulse),
): OctaveDecay[] {
	const seconds = Math.max(0, impulse.zero / impulse.rateHz + arrivalMs / 1000);
	return roomOctaves
		.filter(({toHertz}) => toHertz < Math.min(0.47 * impulse.rateHz, impulse.sweep.law.toHertz))
		.map(band => decayIn(band, split, seconds));
}

/** Power of an impulse response by band. */
export function splitImpulse({samples, rateHz}: Impulse): (band: BandGain) => BandPower {
	return powerSplitter(samples, rateHz);
}

function decayIn(
	band: FrequencyBand,
	split: (band: BandGain) => BandPower,
	fromSeconds: number,
): OctaveDecay {
	const {fromHertz, toHertz, middleHertz} = band;
	const power = split({
		fromHertz: fromHertz / Math.SQRT2,
		toHertz: toHertz * Math.SQRT2,
		gainAt: hertz => octaveGain(band, hertz),
	});
	const {rangeDb, secondsBetween} = decayCurve(power, fromSeconds);
	const wide = (seconds: number | undefined) =>
		seconds !== undefined && (toHertz - fromHertz) * seconds >= leastProduct ? seconds : undefined;
	const figure = (need: number, top: number, bottom: number) =>
		rangeDb >= need ? wide(secondsBetween(top, bottom)) : undefined;
	const edt = figure(rangeFor.edt, 0, -10);
	const t20 = figure(rangeFor.t20, -5, -25);
	const t30 = figure(rangeFor.t30, -5, -35);
	return {
		hertz: nominalOctave(middleHertz),
		rangeDb,
		...(edt !== undefined && {edtSeconds: edt}),
		...(t20 !== undefined && {t20Seconds: t20}),
		...(t30 !== undefined && {t30Seconds: t30}),
	};
}

/** A decay by backward integration. */
export type DecayCurve = {
	readonly rangeDb: number;
	/** Time for 60 dB from the slope between two levels below the start, dB; `undefined` where it does not fall. */
	readonly secondsBetween: (topDb: number, bottomDb: number) => number | undefined;
};

/**
Backward integration of a squared impulse response, with the noise taken off and the part cut off made up by the
exponential that leads into it.

@param power - Of one band; from the arrival on its last fifth holds noise only.
@param fromSeconds - The arrival.
@see ISO 3382-1:2009, 5.3.3, NOTE on the correction C.
*/
export function decayCurve(power: BandPower, fromSeconds = 0): DecayCurve {
	const energyAt = energyBefore(power);
	const blocks = Math.max(0, Math.floor((power.powers.length / power.rateHz - fromSeconds) / blockSeconds));
	const powers = new Float64Array(blocks);
	let before = energyAt(fromSeconds);
	for (let index = 0; index < blocks; index += 1) {
		const after = energyAt(fromSeconds + (index + 1) * blockSeconds);
		powers[index] = (after - before) / (blockSeconds * power.rateHz);
		before = after;
	}

	const tail = Math.max(1, Math.floor(blocks / 5));
	let noise = 0;
	for (let index = blocks - tail; index < blocks; index += 1) noise += powers[index]! / tail;
	const smooth = Float64Array.from(powers, (_, index) => {
		const [a, b] = [Math.max(0, index - 2), Math.min(blocks - 1, index + 2)];
		let sum = 0;
		for (let at = a; at <= b; at += 1) sum += powers[at]!;
		return sum / (b - a + 1);
	});
	let top = 0;
	for (let index = 0; index < blocks; index += 1) if (smooth[index]! > smooth[top]!) top = index;
	const rangeDb = 10 * Math.log10(smooth[top]! / Math.max(noise, 1e-300));
	// Where the decay comes within 6 dB of the noise, it is cut.
	let cut = top;
	while (cut < blocks && smooth[cut]! > 4 * noise) cut += 1;
	cut = Math.min(cut, blocks);
	// The slope that leads there, for the part that is cut off.
	const slope = slopeBefore(smooth, noise, top, cut);
	const lost = slope < 0 && cut > 0 ? Math.max(0, (smooth[cut - 1] ?? 0) - noise) / -slope : 0;
	const energy = new Float64Array(cut + 1);
	energy[cut] = lost;
	for (let index = cut - 1; index >= 0; index -= 1)
		energy[index] = energy[index + 1]! + Math.max(0, powers[index]! - noise);
	const total = energy[0]! || 1e-300;
	return {
		rangeDb,
		secondsBetween(topDb, bottomDb) {
			const times: number[] = [];
			const levels: number[] = [];
			for (let index = 0; index < cut; index += 1) {
				const level = 10 * Math.log10(Math.max(energy[index]!, 1e-300) / total);
				if (level > topDb || level < bottomDb) continue;
				times.push(index * blockSeconds);
				levels.push(level);
			}

			const fall = lineSlope(times, levels);
			return fall !== undefined && fall < 0 ? -60 / fall : undefined;
		},
	};
}

/** Relative fall of the power per block, from the last 15 dB before the cut; negative where it falls. */
function slopeBefore(smooth: Float64Array, noise: number, top: number, cut: number): number {
	const end = smooth[cut - 1];
	if (end === undefined) return 0;
	let from = cut - 1;
	while (from > top && smooth[from]! < 30 * end) from -= 1;
	const times: number[] = [];
	const logs: number[] = [];
	for (let index = from; index < cut; index += 1) {
		times.push(index);
		logs.push(Math.log(Math.max(smooth[index]! - noise, 1e-300)));
	}

	return lineSlope(times, logs) ?? 0;
}

/** Slope of the least-squares line; `undefined` for fewer than three points. */
function lineSlope(x: readonly number[], y: readonly number[]): number | undefined {
	if (x.length < 3) return undefined;
	const meanX = x.reduce((sum, value) => sum + value, 0) / x.length;
	const meanY = y.reduce((sum, value) => sum + value, 0) / y.length;
	let above = 0;
	let below = 0;
	for (let index = 0; index < x.length; index += 1) {
		above += (x[index]! - meanX) * (y[index]! - meanY);
		below += (x[index]! - meanX) ** 2;
	}

	return below > 0 ? above / below : undefined;
}
