import {withinBand} from '../../science/signal/envelope.ts';
import type {Impulse} from './impulses.ts';

const wideBand = [200, 400, 5000, 12_000] as const;
const subBandHertz = [22, 32, 90, 150] as const;

/** How far behind the first sound the strongest may come, seconds. */
const strongestWithin = 0.1;
const subStrongestWithin = 0.5;

/** Level of the noise before the first sound below the strongest of the response, dB; within the band that matters. */
export function noiseBelowDb({samples, zero, rateHz}: Impulse, onsetMs: number, isSub: boolean): number {
	const at = zero + (onsetMs / 1000) * rateHz;
	const end = Math.round(at + (isSub ? subStrongestWithin : strongestWithin) * rateHz);
	const filtered = withinBand(samples.subarray(0, Math.max(1, end)), rateHz, isSub ? subBandHertz : wideBand);
	const margin = isSub ? 0.04 : 0.006;
	const to = Math.round(at - margin * rateHz);
	const from = Math.max(Math.round(0.003 * rateHz), to - Math.round(0.09 * rateHz));
	const noise = meanPower(filtered, from, to);
	let peak = 0;
	for (let index = Math.max(0, to); index < filtered.length; index += 1)
		peak = Math.max(peak, filtered[index]! ** 2);
	return 10 * Math.log10(Math.max(peak, 1e-30) / Math.max(noise, 1e-30));
}

/** Mean square of samples from one to before another; 0 for an empty stretch. */
export function meanPower(samples: Float64Array, from: number, to: number): number {
	let sum = 0;
	const first = Math.max(0, from);
	const last = Math.min(samples.length, to);
	for (let index = first; index < last; index += 1) sum += samples[index]! ** 2;
	return last > first ? sum / (last - first) : 0;
}
