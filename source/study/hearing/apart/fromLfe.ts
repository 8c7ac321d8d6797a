import type {HeardPlaying} from '../heardPlaying.ts';
import {type HeardResponse, responseFrequencies} from '../responses.ts';
import {combined, filteredBy} from './complexLine.ts';
import type {Separated} from './separate.ts';

/** How the subs by the LFE sweep agree with the mains' own sweeps below half the crossover. */
export type LfeAgreement = {
	readonly worstDb: number;
	readonly worstMs: number;
	/** Within 0.5 dB and 0.2 ms: the blend may build on it. */
	readonly isGood: boolean;
};

/** The LFE channel is played 10 dB louder than the mains' redirected bass. */
const lfeAboveDb = 10;
const mostDb = 0.5;
const mostMs = 0.2;

/**
Mains and all subs together from one playing: the LFE sweep holds the subs alone, through its own low-pass; the two stated
low-passes turn it into what a main channel's sweep gets of them.

@param lowPasses - Complex responses on `responseFrequencies`: of the crossover of each main channel, and of the LFE channel.
@returns `undefined` where the playing holds no LFE sweep.
*/
export function separateByLfe(
	playing: HeardPlaying,
	lowPasses: {
		readonly crossover: (channel: string) => HeardResponse | undefined;
		readonly lfe: HeardResponse;
	},
	crossoverHertz: number,
): (Separated & {readonly agreement: LfeAgreement}) | undefined {
	const lfe = playing.lines.find(({isSub, onset}) => isSub && onset);
	if (!lfe) return undefined;
	const frequencies = responseFrequencies();
	const mains = new Map<string, HeardResponse>();
	let together: HeardResponse | undefined;
	let worstDb = 0;
	let worstMs = 0;
	for (const line of playing.lines) {
		const crossover = line.isSub ? undefined : lowPasses.crossover(line.channel);
		if (!crossover) continue;
		const ratio = quotient(crossover, lowPasses.lfe, 10 ** (-lfeAboveDb / 20));
		const subs = filteredBy(lfe.response, ratio);
		together ??= subs;
		mains.set(line.channel, combined(line.response, 1, subs, -1));
		const away = apartBelow(line.response, subs, frequencies, crossoverHertz / 2);
		worstDb = Math.max(worstDb, Math.abs(away.db));
		worstMs = Math.max(worstMs, Math.abs(away.ms));
	}

	if (!together) return undefined;
	return {
		mains,
		groups: new Map([['subs', [{mean: together, scatterDb: Number.NaN}]]]),
		agreement: {worstDb, worstMs, isGood: worstDb <= mostDb && worstMs <= mostMs},
	};
}

function quotient(one: HeardResponse, by: HeardResponse, factor: number): HeardResponse {
	const real = new Float64Array(one.real.length);
	const imaginary = new Float64Array(one.real.length);
	for (let index = 0; index < real.length; index += 1) {
		const [a, b] = [one.real[index]!, one.imaginary[index]!];
		const [c, d] = [by.real[index]!, by.imaginary[index]!];
		// Where the LFE low-pass leaves nothing, nothing can be told of the subs.
		const size = c * c + d * d + 1e-4;
		real[index] = (factor * (a * c + b * d)) / size;
		imaginary[index] = (factor * (b * c - a * d)) / size;
	}

	return {real, imaginary};
}

/** Level and delay of one response against another from 25 Hz to a limit, by their cross spectrum. */
function apartBelow(one: HeardResponse, other: HeardResponse, frequencies: Float64Array, toHertz: number) {
	let [own, others, real, slope, weight] = [0, 0, 0, 0, 0];
	for (let index = 0; index < frequencies.length; index += 1) {
		const hertz = frequencies[index]!;
		if (hertz < 25 || hertz > toHertz) continue;
		const [a, b] = [one.real[index]!, one.imaginary[index]!];
		const [c, d] = [other.real[index]!, other.imaginary[index]!];
		own += a * a + b * b;
		others += c * c + d * d;
		real += a * c + b * d;
		// Small angles: the delay that explains them best, weighted by power.
		slope += (b * c - a * d) * 2 * Math.PI * hertz;
		weight += (c * c + d * d) * (2 * Math.PI * hertz) ** 2;
	}

	return {
		db: 10 * Math.log10(Math.max(own, 1e-30) / Math.max(others, 1e-30)),
		ms: real > 0 && weight > 0 ? (-1000 * slope) / weight : Number.POSITIVE_INFINITY,
	};
}
