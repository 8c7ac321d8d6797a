import type {HeardResponse} from '../responses.ts';

/** A front channel at one seat: its speaker alone and what each group of subs adds, on common frequencies and time. */
export type BlendFront = {
	readonly channel: string;
	readonly seat: string;
	/** Share of the seat. */
	readonly weight: number;
	readonly crossoverHertz: number;
	readonly main: HeardResponse;
	readonly groups: readonly HeardResponse[];
};

/** What one group's box can do, on top of what stands. */
export type BlendGroup = {
	/** Delays that can be added, ms; 0 among them. */
	readonly addableMs: readonly number[];
	readonly canTurn: boolean;
};

export type RecordedBlend = {
	/** By group: delay to add, ms, and whether to turn its polarity. */
	readonly changes: ReadonlyArray<{readonly addedMs: number; readonly isTurned: boolean}>;
	/** Mean over fronts and seats of what the level through the crossover gains, dB. */
	readonly gainDb: number;
	/** By channel, over its seats. */
	readonly fronts: ReadonlyArray<{
		readonly channel: string;
		readonly gainDb: number;
		readonly lossDb: number;
		readonly lossNowDb: number;
	}>;
};

/** No front may be worse than it stands by more than this, dB. */
const mostWorseDb = 0.1;
/** A whole search does not pay below this, dB: what stands is left alone. */
const leastGainDb = 0.3;

/**
The change of delay and polarity with which mains and subs add up most from half to twice the crossover, over all recorded
fronts and seats, by complex sums; no single front may lose.

Groups are searched by turns from many starts, coarsely first, each in the steps of its box.

@param frequenciesHz - Shape (n), of all responses.
@returns The change, all zero where nothing gains 0.3 dB.
@throws {RangeError} If there is no front, or groups differ in number.
*/
export function recordedBlend(
	fronts: readonly BlendFront[],
	groups: readonly BlendGroup[],
	frequenciesHz: Float64Array,
): RecordedBlend {
	if (fronts.length === 0 || groups.length === 0)
		throw new RangeError(
			`fronts and groups must hold one at least, got ${fronts.length} and ${groups.length}`,
		);
	const odd = fronts.find(front => front.groups.length !== groups.length);
	if (odd) throw new RangeError(`${odd.channel} must have ${groups.length} groups, got ${odd.groups.length}`);
	const prepared = fronts.map(front => prepare(front, frequenciesHz));
	const channels = [...new Set(fronts.map(({channel}) => channel))];
	const none = groups.map(() => ({addedMs: 0, isTurned: false}));
	const now = levelsOf(prepared, channels, none);

	let best = {changes: none, score: mean(now)};
	const tryOut = (changes: typeof none) => {
		const levels = levelsOf(prepared, channels, changes);
		if (levels.some((level, index) => level < now[index]! - mostWorseDb)) return;
		const score = mean(levels);
		if (score > best.score + 1e-9) best = {changes, score};
	};
	const withGroup = (changes: typeof none, at: number, indexes: Iterable<number>) => {
		const {addableMs, canTurn} = groups[at]!;
		const now = changes[at]!;
		for (const index of indexes)
			for (const isTurned of canTurn ? [now.isTurned, !now.isTurned] : [false])
				tryOut(
					changes.map((change, each) => (each === at ? {addedMs: addableMs[index]!, isTurned} : change)),
				);
	};
	// A coarse look at all, then the steps about the best; with steps of a hundredth of a millisecond all would take seconds.
	const strides = groups.map(({addableMs}) => strideOf(addableMs));
	const coarse = groups.map(({addableMs}, at) => everyNth(addableMs.length, strides[at]!));
	withGroup(none, 0, coarse[0]!);
	if (groups.length > 1)
		// Each pair of a delay and polarity of one group is a start for the others.
		for (const isTurned of groups[0]!.canTurn ? [false, true] : [false])
			for (const index of everyNth(
				groups[0]!.addableMs.length,
				Math.floor(groups[0]!.addableMs.length / 24),
			)) {
				const start = none.map((change, at) =>
					at === 0 ? {addedMs: groups[0]!.addableMs[index]!, isTurned} : change,
				);
				for (let at = 1; at < groups.length; at += 1) withGroup(start, at, coarse[at]!);
			}

	for (let round = 0; round < 4; round += 1) {
		const before = best.score;
		for (let at = 0; at < groups.length; at += 1) {
			withGroup(best.changes, at, coarse[at]!);
			const {addableMs} = groups[at]!;
			const place = addableMs.indexOf(best.changes[at]!.addedMs);
			withGroup(best.changes, at, about(place, strides[at]!, addableMs.length));
		}

		if (best.score - before < 1e-6) break;
	}

	const changes = best.score - mean(now) < leastGainDb ? none : best.changes;
	const then = levelsOf(prepared, channels, changes);
	const perfect = perfectLevels(prepared, channels);
	return {
		changes,
		gainDb: mean(then) - mean(now),
		fronts: channels.map((channel, index) => ({
			channel,
			gainDb: then[index]! - now[index]!,
			lossDb: perfect[index]! - then[index]!,
			lossNowDb: perfect[index]! - now[index]!,
		})),
	};
}

/** Steps between two looks: so many as make a twentieth of a period at 160 Hz. */
function strideOf(addableMs: readonly number[]): number {
	const step = addableMs.length > 1 ? Math.abs(addableMs[1]! - addableMs[0]!) : 1;
	return Math.max(1, Math.floor(0.3 / step));
}

function everyNth(count: number, stride: number): number[] {
	const step = Math.max(1, stride);
	return Array.from({length: Math.ceil(count / step)}, (_, index) => index * step);
}

function about(place: number, reach: number, count: number): number[] {
	const first = Math.max(0, place - reach);
	return Array.from({length: Math.min(count, place + reach + 1) - first}, (_, index) => first + index);
}

type PreparedFront = BlendFront & {readonly frequencies: Float64Array; readonly first: number};

function prepare(front: BlendFront, frequenciesHz: Float64Array): PreparedFront {
	const first = frequenciesHz.findIndex(hertz => hertz >= front.crossoverHertz / 2);
	const last = frequenciesHz.findLastIndex(hertz => hertz <= 2 * front.crossoverHertz);
	return {...front, frequencies: frequenciesHz.subarray(first, last + 1), first};
}

/** Mean level from half to twice the crossover by channel, dB; seats by their share. */
function levelsOf(
	fronts: readonly PreparedFront[],
	channels: readonly string[],
	changes: ReadonlyArray<{readonly addedMs: number; readonly isTurned: boolean}>,
): number[] {
	return byChannel(fronts, channels, front => {
		const {frequencies, first, main, groups} = front;
		let sum = 0;
		for (let index = 0; index < frequencies.length; index += 1) {
			const at = first + index;
			let real = main.real[at]!;
			let imaginary = main.imaginary[at]!;
			for (let group = 0; group < groups.length; group += 1) {
				const {addedMs, isTurned} = changes[group]!;
				const angle = (-2 * Math.PI * frequencies[index]! * addedMs) / 1000;
				const sign = isTurned ? -1 : 1;
				const [c, s] = [sign * Math.cos(angle), sign * Math.sin(angle)];
				const [a, b] = [groups[group]!.real[at]!, groups[group]!.imaginary[at]!];
				real += a * c - b * s;
				imaginary += a * s + b * c;
			}

			sum += 10 * Math.log10(Math.max(real * real + imaginary * imaginary, 1e-12));
		}

		return sum / frequencies.length;
	});
}

/** The same if everything arrived in phase at every frequency. */
function perfectLevels(fronts: readonly PreparedFront[], channels: readonly string[]): number[] {
	return byChannel(fronts, channels, ({frequencies, first, main, groups}) => {
		let sum = 0;
		for (let index = 0; index < frequencies.length; index += 1) {
			const size = (one: HeardResponse) =>
				Math.hypot(one.real[first + index]!, one.imaginary[first + index]!);
			sum +=
				20 * Math.log10(Math.max(1e-6, size(main) + groups.reduce((all, group) => all + size(group), 0)));
		}

		return sum / frequencies.length;
	});
}

function byChannel(
	fronts: readonly PreparedFront[],
	channels: readonly string[],
	levelOf: (front: PreparedFront) => number,
): number[] {
	return channels.map(channel => {
		const own = fronts.filter(front => front.channel === channel);
		const weight = own.reduce((sum, front) => sum + front.weight, 0);
		return own.reduce((sum, front) => sum + front.weight * levelOf(front), 0) / weight;
	});
}

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
