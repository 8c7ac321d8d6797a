import {peakOffset, withinBand} from '../../science/signal/envelope.ts';
import {forwardReal, inverseReal} from '../../science/signal/fourier.ts';
import {powerOfTwoFrom, type SoftBand} from '../../science/signal/spectrumParts.ts';
import type {Impulse} from './impulses.ts';

const alignBand: SoftBand = [900, 1500, 6000, 12_000];
const beforeMs = 3;
const afterMs = 12;

/** How far one direct sound lies behind another of the same line. */
export type Lag = {
	/** The second minus the first, ms. */
	readonly ms: number;
	/** Level of the second above the first, dB. */
	readonly db: number;
	/** How alike they are, −1 to 1. */
	readonly likeness: number;
};

/** The direct sound above 1 kHz, cut about a time, the same number of samples whatever the place between samples. */
export function directPart({samples, zero, rateHz}: Impulse, ms: number, lengthMs = afterMs): Float64Array {
	const from = Math.round(zero + ((ms - beforeMs) * rateHz) / 1000);
	const length = Math.round(((beforeMs + lengthMs) * rateHz) / 1000);
	const part = new Float64Array(length);
	for (let index = 0; index < length; index += 1) part[index] = samples[from + index] ?? 0;
	const top = Math.min(alignBand[3], 0.47 * rateHz);
	return withinBand(part, rateHz, [alignBand[0], alignBand[1], top / 2, top]);
}

/**
Lag between two impulse responses of one line, by the peak of their correlation above 1 kHz.

@param ms - Where the first one's first sound lies, ms from its schedule.
*/
export function lagBetween(first: Impulse, second: Impulse, ms: number): Lag {
	const one = directPart(first, ms);
	const other = directPart(second, ms);
	// Both are cut on whole samples; what each cut leaves over is put back.
	const left = (impulse: Impulse) => {
		const exact = impulse.zero + ((ms - beforeMs) * impulse.rateHz) / 1000;
		return Math.round(exact) - exact;
	};
	const length = powerOfTwoFrom(2 * one.length);
	const spectrumOf = (samples: Float64Array) => {
		const padded = new Float64Array(length);
		padded.set(samples);
		return forwardReal(padded);
	};
	const [a, b] = [spectrumOf(one), spectrumOf(other)];
	for (let index = 0; index < a.length; index += 2) {
		const [p, q, r, s] = [b[index]!, b[index + 1]!, a[index]!, a[index + 1]!];
		a[index] = p * r + q * s;
		a[index + 1] = q * r - p * s;
	}

	const correlation = inverseReal(a);
	let best = 0;
	for (let index = 0; index < length; index += 1) if (correlation[index]! > correlation[best]!) best = index;
	const around = [-1, 0, 1].map(step => correlation[(best + step + length) % length]!);
	const place = (best > length / 2 ? best - length : best) + peakOffset(around, 1);
	const energy = (samples: Float64Array) => samples.reduce((sum, value) => sum + value * value, 0);
	const [e1, e2] = [energy(one), energy(other)];
	return {
		ms: ((place + left(second) - left(first)) * 1000) / first.rateHz,
		db: 10 * Math.log10(Math.max(e2, 1e-30) / Math.max(e1, 1e-30)),
		likeness: correlation[best]! / Math.sqrt(Math.max(e1 * e2, 1e-60)),
	};
}

/** Two sweeps of one line: how much longer than planned they lie apart. */
export type Stretch = {
	readonly channel: string;
	readonly fromSeconds: number;
	readonly toSeconds: number;
	readonly ms: number;
	readonly likeness: number;
	/** Both sweeps follow one law, so that a wrong clock smears them alike and the stretch is exact. */
	readonly isExact: boolean;
};

/** Stretches agree with a clock to this, ms; a longer one that agrees with none is right where all disagree. */
const agreeMs = 0.08;

/**
The clock's error, ppm: the slope that most stretches agree with, among equals that of the longest, then the mean of those
that agree, of exact ones alone where there are any. One jump, or one soft sweep lost in noise, does not move it.
*/
export function clockPpm(stretches: readonly Stretch[]): number {
	const lengthOf = ({fromSeconds, toSeconds}: Stretch) => toSeconds - fromSeconds;
	const agreeing = (slope: number) =>
		stretches.filter(each => Math.abs(each.ms - slope * lengthOf(each)) < agreeMs);
	let best: readonly Stretch[] = [];
	for (const each of [...stretches].sort((a, b) => lengthOf(b) - lengthOf(a))) {
		const agreed = agreeing(each.ms / lengthOf(each));
		if (agreed.length > best.length) best = agreed;
	}

	const exact = best.filter(({isExact}) => isExact);
	let [above, below] = [0, 0];
	for (const each of exact.length > 0 ? exact : best) {
		above += each.ms * lengthOf(each);
		below += lengthOf(each) ** 2;
	}

	return below > 0 ? (1000 * above) / below : 0;
}
