import {lfeGainDb} from '../../../profile/practice.ts';
import type {HeardPlaying} from '../heardPlaying.ts';
import {type HeardResponse, responseFrequencies} from '../responses.ts';
import {combined, filteredBy, meanResponse} from './complexLine.ts';
import type {Separated} from './separate.ts';

/** How the subs by the LFE sweep agree with the mains' own sweeps below half the crossover. */
export type LfeAgreement = {
	/** Level and time of the mains' low ends against it, their mean; the worst of several crossovers, with its sign. */
	readonly db: number;
	readonly ms: number;
	/** Within 1 dB and 0.4 ms: the blend may build on it. */
	readonly isGood: boolean;
};

/** What the boxes are said to do to bass, as curves on `responseFrequencies`. */
export type StatedLowPasses = {
	/** Crossover of a main channel, hertz; `undefined` where it plays full range. */
	readonly crossoverOf: (channel: string) => number | undefined;
	/** Low-pass of the bass that is taken from a main channel with this crossover. */
	readonly ofCrossover: (crossoverHertz: number) => HeardResponse;
	readonly ofLfe: HeardResponse;
};

/** Both parts of a playing by its LFE sweep, and how far that is to be trusted. */
export type SeparatedByLfe = Separated & {readonly agreement: LfeAgreement};

/**
Beyond this the stated low-passes are not those of the boxes. In simulated rooms half as much refused a third of the rounds in
which all was right, for the speakers sound down there too, and kept no loss away that the next playing does not.
*/
const mostDb = 1;
const mostMs = 0.4;
/** Below this neither sub nor recorder has anything to say, hertz. */
const fromHertz = 20;

/**
Mains and all subs together from one playing: the LFE sweep holds the subs alone, through its own low-pass; the two stated
low-passes turn it into what a main channel's sweep gets of them.

@param group - Name under which all subs stand in the result.
@returns `undefined` where the playing holds no LFE sweep, or no main channel with a crossover.
*/
export function separateByLfe(
	playing: HeardPlaying,
	{crossoverOf, ofCrossover, ofLfe}: StatedLowPasses,
	group: string,
): SeparatedByLfe | undefined {
	const lfe = playing.lines.find(({isSub, onset}) => isSub && onset);
	if (!lfe) return undefined;
	const frequencies = responseFrequencies();
	const mains = new Map<string, HeardResponse>();
	const subs = new Map<number, HeardResponse>();
	const low = new Map<number, HeardResponse[]>();
	for (const line of playing.lines) {
		const hertz = line.isSub ? undefined : crossoverOf(line.channel);
		if (hertz === undefined || !line.onset) continue;
		const own =
			subs.get(hertz) ??
			filteredBy(lfe.response, quotient(ofCrossover(hertz), ofLfe, 10 ** (-lfeGainDb / 20)));
		subs.set(hertz, own);
		mains.set(line.channel, combined(line.response, 1, own, -1));
		low.set(hertz, [...(low.get(hertz) ?? []), line.response]);
	}

	if (subs.size === 0) return undefined;
	let [db, ms] = [0, 0];
	for (const [hertz, lines] of low) {
		// What is left of each speaker down there has a phase of its own: of their mean it is less.
		const {mean} = meanResponse(lines, frequencies, [fromHertz, hertz / 2]);
		const away = apartBelow(mean, subs.get(hertz)!, frequencies, hertz / 2);
		if (Math.abs(away.db) > Math.abs(db)) db = away.db;
		if (Math.abs(away.ms) > Math.abs(ms)) ms = away.ms;
	}

	return {
		mains,
		groups: new Map([
			[group, [...subs].map(([crossoverHertz, mean]) => ({crossoverHertz, mean, scatterDb: Number.NaN}))],
		]),
		agreement: {db, ms, isGood: Math.abs(db) <= mostDb && Math.abs(ms) <= mostMs},
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

/** Level and delay of one response against another up to a limit, by their cross spectrum. */
function apartBelow(one: HeardResponse, other: HeardResponse, frequencies: Float64Array, toHertz: number) {
	let [own, others, real, slope, weight] = [0, 0, 0, 0, 0];
	for (let index = 0; index < frequencies.length; index += 1) {
		const hertz = frequencies[index]!;
		if (hertz < fromHertz || hertz > toHertz) continue;
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
