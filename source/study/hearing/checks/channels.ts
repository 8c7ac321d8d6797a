import {finding} from '../../../profile/finding.ts';
import {withinBand} from '../../../science/signal/envelope.ts';
import type {HearingFinding} from '../facts.ts';
import type {HeardLine, HeardPlaying} from '../heardPlaying.ts';

/** Reflections of one speaker at one place are its finger-print: looked at from just after the direct sound, ms. */
const fromMs = 1.5;
const toMs = 32;
const band = [700, 1200, 5000, 9000] as const;
/** Finger-prints of two speakers agree by chance to 0.1; of one speaker to nearly 1. */
const sameFrom = 0.9;
const leakFrom = 0.4;

/** Channels that do not come out of their own speakers alone. */
export function channelFindings({lines}: HeardPlaying): HearingFinding[] {
	const mains = lines.filter(({isSub, onset, direct}) => !isSub && onset && direct.sweep.law.toHertz > 4000);
	const [left, right] = ['FL', 'FR'].map(id => mains.find(({channel}) => channel === id));
	const others = mains.filter(({channel}) => channel !== 'FL' && channel !== 'FR');
	if (left && right && others.length > 0) {
		const folded = others.filter(line => explained(line, [left, right]) > sameFrom);
		if (folded.length === others.length)
			return [
				finding(
					'problem',
					'heard-folded',
					folded.map(({channel}) => channel),
				),
			];
	}

	const same: HearingFinding[] = [];
	const leaking = new Set<string>();
	for (const [index, one] of mains.entries())
		for (const other of mains.slice(index + 1)) {
			const share = explained(other, [one]);
			if (share > sameFrom) same.push(finding('problem', 'heard-same-speaker', [one.channel, other.channel]));
			else if (share > leakFrom ** 2) {
				leaking.add(one.channel);
				leaking.add(other.channel);
			}
		}

	if (same.length > 0) return same;
	return leaking.size > 0 ? [finding('problem', 'heard-upmixed', [...leaking])] : [];
}

/** Share of the energy of one finger-print that others explain, by least squares; one sample of play either way. */
function explained(line: HeardLine, by: readonly HeardLine[]): number {
	const start = Math.max(...[line, ...by].map(({onset}) => onset!.ms)) + fromMs;
	const own = print(line, start);
	let best = 0;
	for (const lag of [-1, 0, 1]) {
		const others = by.map(other => print(other, start, lag));
		best = Math.max(best, projected(own, others));
	}

	return best;
}

function print({direct}: HeardLine, startMs: number, lag = 0): Float64Array {
	const {samples, zero, rateHz} = direct;
	const from = Math.round(zero + (startMs * rateHz) / 1000) + lag;
	const length = Math.round(((toMs - fromMs) * rateHz) / 1000);
	const part = new Float64Array(length);
	part.set(samples.subarray(Math.max(0, from), Math.max(0, from + length)));
	return withinBand(part, rateHz, band);
}

function projected(own: Float64Array, others: readonly Float64Array[]): number {
	const dot = (a: Float64Array, b: Float64Array) => {
		let sum = 0;
		for (let index = 0; index < a.length; index += 1) sum += a[index]! * b[index]!;
		return sum;
	};
	const energy = dot(own, own);
	if (energy === 0) return 0;
	const [a, b] = others;
	const [pa, aa] = [dot(own, a!), dot(a!, a!)];
	if (!b) return aa > 0 ? pa ** 2 / (aa * energy) : 0;
	const [pb, bb, ab] = [dot(own, b), dot(b, b), dot(a!, b)];
	const determinant = aa * bb - ab * ab;
	if (!(determinant > 1e-9 * aa * bb)) return aa > 0 ? pa ** 2 / (aa * energy) : 0;
	const x = (pa * bb - pb * ab) / determinant;
	const y = (pb * aa - pa * ab) / determinant;
	return (x * pa + y * pb) / energy;
}
