import type {ChannelId} from '../../../source/profile/types.ts';
import {distanceMetres} from './tape.ts';
import type {Truth} from './truth.ts';

/**
True physics of the invented room, written apart from the program: levels by a direct and a diffuse part, subs by
distance, filters as analogue prototypes, sums of tones as complex numbers.
*/

/** Pink noise for speakers: third-octaves of 400 Hz to 2.5 kHz. For subs: of 31.5 to 100 Hz. Limits of IEC 61260-1:2014. */
export const mainsBandHertz = [355, 2818] as const;
export const subBandHertz = [28.2, 112.2] as const;

/** Deviations that rooms make, fixed so that they belong to the room and not to a reading: within ±1.5 dB. */
function roomDeviationDb(source: string, seat: string): number {
	let hash = 7;
	for (const sign of `${source}/${seat}`) hash = (hash * 31 + sign.charCodeAt(0)) % 1009;
	return (hash / 1009 - 0.5) * 3;
}

/** True unweighted level of the noise for speakers with trim 0, dB. */
export function trueMainDb(truth: Truth, channel: ChannelId, seat: string): number {
	const {at, sensitivityDb} = truth.speakers[channel]!;
	const distance = distanceMetres(at, truth.seats[seat]!);
	const diffuse = 0.4;
	return (
		75 +
		(sensitivityDb - 87) +
		10 * Math.log10((2.8 / distance) ** 2 * (1 - diffuse) + diffuse) +
		roomDeviationDb(channel, seat)
	);
}

/** True unweighted level of one sub's noise with every gain 0, dB. */
export function trueSubDb(truth: Truth, sub: string, seat: string): number {
	const {at, levelAtOneMetreDb} = truth.subs[sub]!;
	// Boundaries hold the level up: 4 dB for each doubling of the distance instead of 6.
	return (
		levelAtOneMetreDb - 13.3 * Math.log10(distanceMetres(at, truth.seats[seat]!)) + roomDeviationDb(sub, seat)
	);
}

/** Time from the receiver's output to the seat without any delay dialled in, ms. */
export function trueArrivalMs(truth: Truth, source: string, seat: string): number {
	const at = truth.speakers[source as ChannelId]?.at ?? truth.subs[source]!.at;
	const latency = source in truth.subs ? truth.processorLatencyMs : 0;
	return (distanceMetres(at, truth.seats[seat]!) / truth.speedOfSound) * 1000 + latency;
}

/** C-weighting of a tone, dB. @see IEC 61672-1:2013, Annex E: poles at 20.60 and 12194 Hz, 0.062 dB at 1 kHz added back. */
function cWeightingDb(hertz: number): number {
	return (
		20 * Math.log10((12194 ** 2 * hertz ** 2) / ((hertz ** 2 + 20.6 ** 2) * (hertz ** 2 + 12194 ** 2))) +
		0.062
	);
}

const bandSteps = 200;

/** Frequencies at equal ratios, so that each carries the same energy of pink noise. */
function bandHertz(from: number, to: number): number[] {
	return Array.from({length: bandSteps}, (_, index) => from * (to / from) ** ((index + 0.5) / bandSteps));
}

/** How much a C-weighted meter reads pink noise of a band below its unweighted level, dB (negative: lower). */
export function bandWeightingDb(from: number, to: number): number {
	const energies = bandHertz(from, to).map(hertz => 10 ** (cWeightingDb(hertz) / 10));
	return 10 * Math.log10(energies.reduce((sum, energy) => sum + energy, 0) / bandSteps);
}

/** One source of a sum: its level, dB, and its time, ms. */
export type Part = {readonly levelDb: number; readonly timeMs: number; readonly phase?: number};

/** Level of a sum of equal tones, dB. */
export function toneSumDb(hertz: number, parts: readonly Part[]): number {
	let real = 0;
	let imaginary = 0;
	for (const {levelDb, timeMs, phase = 0} of parts) {
		const angle = phase - 2 * Math.PI * hertz * (timeMs / 1000);
		real += 10 ** (levelDb / 20) * Math.cos(angle);
		imaginary += 10 ** (levelDb / 20) * Math.sin(angle);
	}

	return 20 * Math.log10(Math.hypot(real, imaginary));
}

/** Level of subs together over their noise, dB. */
export function bandSumDb(parts: readonly Part[]): number {
	const energies = bandHertz(...subBandHertz).map(hertz => 10 ** (toneSumDb(hertz, parts) / 10));
	return 10 * Math.log10(energies.reduce((sum, energy) => sum + energy, 0) / bandSteps);
}

export function toneWeightingDb(hertz: number): number {
	return cWeightingDb(hertz);
}

/** Magnitude, dB, and phase of a second-order Butterworth high-pass at a frequency. s = jf/fc; s² / (s² + √2·s + 1). */
export function highPass(
	hertz: number,
	cornerHertz: number,
): {readonly decibels: number; readonly phase: number} {
	const w = hertz / cornerHertz;
	const phase = Math.PI - Math.atan2(Math.SQRT2 * w, 1 - w * w);
	return {decibels: 20 * Math.log10((w * w) / Math.hypot(1 - w * w, Math.SQRT2 * w)), phase};
}

/** Magnitude, dB, and phase of a fourth-order Linkwitz-Riley low-pass: a second-order Butterworth one, squared. */
export function lowPass(
	hertz: number,
	cornerHertz: number,
): {readonly decibels: number; readonly phase: number} {
	const w = hertz / cornerHertz;
	return {
		decibels: -40 * Math.log10(Math.hypot(1 - w * w, Math.SQRT2 * w)),
		phase: -2 * Math.atan2(Math.SQRT2 * w, 1 - w * w),
	};
}

/** Corner of the subs' vented boxes: a fourth-order Butterworth high-pass is 6 dB down where (fc/f)⁸ = 10^0.6 − 1. */
const subCornerHertz = 22 * (10 ** 0.6 - 1) ** (1 / 8);
const subUpperHertz = 180;

/** What a sub itself does to a tone: vented box (fourth-order Butterworth, −6 dB at 22 Hz) and a second-order limit at 180 Hz. */
export function subBox(hertz: number): {readonly decibels: number; readonly phase: number} {
	const low = hertz / subCornerHertz;
	// The two sections of a fourth-order Butterworth filter have 2·sin(22.5°) and 2·sin(67.5°) as 1/Q.
	const sections = [Math.PI / 8, (3 * Math.PI) / 8].map(angle => 2 * Math.sin(angle) * low);
	const below = sections.map(damping => ({
		decibels: 20 * Math.log10((low * low) / Math.hypot(1 - low * low, damping)),
		phase: Math.PI - Math.atan2(damping, 1 - low * low),
	}));
	const high = hertz / subUpperHertz;
	const above = {
		decibels: -20 * Math.log10(Math.hypot(1 - high * high, Math.SQRT2 * high)),
		phase: -Math.atan2(Math.SQRT2 * high, 1 - high * high),
	};
	return [...below, above].reduce((sum, part) => ({
		decibels: sum.decibels + part.decibels,
		phase: sum.phase + part.phase,
	}));
}
