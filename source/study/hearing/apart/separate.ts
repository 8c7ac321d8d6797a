import type {HeardPlaying} from '../heardPlaying.ts';
import {type HeardResponse, responseFrequencies} from '../responses.ts';
import {shiftBetween} from '../spots.ts';
import {aligned, combined, meanResponse} from './complexLine.ts';

/** One change from a playing to the next at the same spot, made to a group of subs. */
export type StateChange =
	| {readonly kind: 'turned'; readonly group: string}
	| {readonly kind: 'muted'; readonly group: string}
	| {readonly kind: 'delayed'; readonly group: string; readonly ms: number};

/** Mains and groups of subs by themselves at one spot, all against one time. */
export type Separated = {
	/** By main channel: its speaker without any sub. */
	readonly mains: ReadonlyMap<string, HeardResponse>;
	/** By group: its subs as they stand, through a main channel's low-pass; once for each crossover among the mains. */
	readonly groups: ReadonlyMap<string, readonly SeparatedGroup[]>;
};

export type SeparatedGroup = {
	/** Of the mains that it comes from; absent where nobody said. */
	readonly crossoverHertz?: number;
	/** Mean over the main channels of that crossover. */
	readonly mean: HeardResponse;
	/** What single channels differ from it from 30 to 150 Hz, dB below it: their common crossover shows here. */
	readonly scatterDb: number;
};

const band = [30, 150] as const;

/**
Tells mains and subs apart without any model of filters: what a change to the subs alone changes is theirs.

With S = A + B: turned, S′ = A − B, so that B = (S − S′)/2; muted, B = S − S′; delayed by τ, B = (S − S′)/(1 − e^(−jωτ)),
which is blind where ωτ is a whole turn. Each change is made to what stood in the playing before, and stays.

@param playings - At one spot: as it stands, then one playing for each change.
@param changes - One fewer than playings.
@param crossoverOf - Of a main channel, hertz: only mains with one crossover get the same of a sub.
@throws {RangeError} If the numbers do not fit.
*/
export function separate(
	playings: readonly HeardPlaying[],
	changes: readonly StateChange[],
	crossoverOf: (channel: string) => number | undefined = () => undefined,
): Separated {
	if (playings.length !== changes.length + 1)
		throw new RangeError(
			`playings must be one more than the ${changes.length} changes, got ${playings.length}`,
		);
	const frequencies = responseFrequencies();
	const first = playings[0]!;
	const shifts = playings.map(playing => shiftBetween(first, playing) ?? {ms: 0, db: 0});
	const mains = new Map<string, HeardResponse>();
	const found = new Map(changes.map(({group}) => [group, new Map<number | undefined, HeardResponse[]>()]));
	for (const line of first.lines) {
		if (line.isSub) continue;
		const heard = playings.flatMap((playing, index) => {
			const own = playing.lines.find(({channel}) => channel === line.channel);
			return own ? [aligned(own.response, frequencies, shifts[index]!.ms, shifts[index]!.db)] : [];
		});
		if (heard.length < playings.length) continue;
		let rest = heard[0]!;
		for (const [index, change] of changes.entries()) {
			const difference = combined(heard[index]!, 1, heard[index + 1]!, -1);
			const group = groupOf(change, difference, frequencies);
			const own = found.get(change.group)!;
			const crossoverHertz = crossoverOf(line.channel);
			own.set(crossoverHertz, [...(own.get(crossoverHertz) ?? []), group]);
			rest = combined(rest, 1, group, -1);
		}

		mains.set(line.channel, rest);
	}

	return {
		mains,
		groups: new Map(
			[...found].map(([group, each]) => [
				group,
				[...each].map(([crossoverHertz, responses]) => ({
					...(crossoverHertz !== undefined && {crossoverHertz}),
					...meanResponse(responses, frequencies, band),
				})),
			]),
		),
	};
}

function groupOf(change: StateChange, difference: HeardResponse, frequencies: Float64Array): HeardResponse {
	if (change.kind === 'turned') return combined(difference, 0.5, difference, 0);
	if (change.kind === 'muted') return difference;
	const real = new Float64Array(frequencies.length);
	const imaginary = new Float64Array(frequencies.length);
	for (let index = 0; index < frequencies.length; index += 1) {
		const angle = (2 * Math.PI * frequencies[index]! * change.ms) / 1000;
		// 1 − e^(−jωτ)
		const [c, d] = [1 - Math.cos(angle), Math.sin(angle)];
		const size = c * c + d * d;
		// Near a whole turn the quotient is noise: it is held down rather than blown up.
		const scale = size / (size * size + 1e-3);
		const [a, b] = [difference.real[index]!, difference.imaginary[index]!];
		real[index] = scale * (a * c + b * d);
		imaginary[index] = scale * (b * c - a * d);
	}

	return {real, imaginary};
}
