import type {HeardPlaying} from './heardPlaying.ts';
import {responseFrequencies} from './responses.ts';
import {shiftBetween} from './spots.ts';

/** What was done to the subs for a playing, as its sound tells it against an earlier one at the same spot. */
export type HeardState =
	| {readonly kind: 'as it stands'}
	| {readonly kind: 'turned'}
	| {readonly kind: 'muted'}
	| {readonly kind: 'delayed'; readonly ms: number; readonly isTurned: boolean}
	/** Changed, but not all subs alike: one of several. */
	| {readonly kind: 'partly'}
	| {readonly kind: 'unknown'};

/** Where subs alone play under any crossover that is worth blending, hertz. */
const fromHertz = 25;
const toHertz = 42;
const nearEnough = 0.2;
const mutedBelow = 0.2;
const alikeFrom = 0.97;
const longestDelayMs = 15;
const aboutAskedMs = 1.5;

/**
The state of the subs in a playing against an earlier one, read from 25 to 42 Hz of every line that both have.

@param askedMs - Delay that was asked for: looked for first, for a sub with one strong standing wave down there sounds alike turned and delayed.
*/
export function stateAgainst(earlier: HeardPlaying, later: HeardPlaying, askedMs?: number): HeardState {
	const shift = shiftBetween(earlier, later);
	if (!shift) return {kind: 'unknown'};
	const frequencies = responseFrequencies();
	const bins = [...frequencies.keys()].filter(
		index => frequencies[index]! >= fromHertz && frequencies[index]! <= toHertz,
	);
	const scale = 10 ** (-shift.db / 20);
	let [before, after] = [0, 0];
	const products: Array<readonly [hertz: number, real: number, imaginary: number]> = [];
	for (const line of earlier.lines) {
		const other = later.lines.find(({channel}) => channel === line.channel);
		if (!other) continue;
		for (const index of bins) {
			const [a, b] = [line.response.real[index]!, line.response.imaginary[index]!];
			const [c, d] = [scale * other.response.real[index]!, scale * other.response.imaginary[index]!];
			before += a * a + b * b;
			after += c * c + d * d;
			products.push([frequencies[index]!, a * c + b * d, a * d - b * c]);
		}
	}

	if (before === 0) return {kind: 'unknown'};
	const crossOf = (ms: number) => {
		let [real, imaginary] = [0, 0];
		for (const [hertz, x, y] of products) {
			const angle = (2 * Math.PI * hertz * ms) / 1000;
			real += x * Math.cos(angle) - y * Math.sin(angle);
			imaginary += x * Math.sin(angle) + y * Math.cos(angle);
		}

		return [real, imaginary] as const;
	};
	if (after < mutedBelow ** 2 * before) return {kind: 'muted'};
	const [real, imaginary] = crossOf(shift.ms);
	const away = (sign: number) => Math.hypot(real / before - sign, imaginary / before);
	if (away(1) < nearEnough) return {kind: 'as it stands'};
	if (away(-1) < nearEnough) return {kind: 'turned'};
	const bestOf = (fromMs: number, toMs: number) => {
		let best = {ms: 0, size: 0, real: 0};
		for (let ms = fromMs; ms <= toMs; ms += 0.05) {
			const [x] = crossOf(ms + shift.ms);
			if (Math.abs(x) > best.size) best = {ms, size: Math.abs(x), real: x};
		}

		return best;
	};
	const asked = askedMs === undefined ? undefined : bestOf(askedMs - aboutAskedMs, askedMs + aboutAskedMs);
	// At the edge of what was looked at it is not there.
	const isAsked =
		asked !== undefined &&
		Math.abs(asked.ms - askedMs!) < aboutAskedMs - 0.1 &&
		asked.real > alikeFrom * Math.sqrt(before * after);
	const best = isAsked ? asked : bestOf(-longestDelayMs, longestDelayMs);

	if (best.size > alikeFrom * Math.sqrt(before * after))
		return {kind: 'delayed', ms: best.ms, isTurned: best.real < 0};
	return {kind: 'partly'};
}
