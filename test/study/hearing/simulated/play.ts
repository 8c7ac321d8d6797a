import type {PlayedRound} from '../../../../source/study/hearing/round.ts';
import {roundSamples} from '../../../../source/study/playing/roundSamples.ts';
import {type Complex, randomFrom} from './room.ts';
import {transform} from './transform.ts';

/**
An impulse response at 48 kHz from discrete paths, each with its own filter, built in the frequency domain so that
delays between samples are exact.

@param length - Samples, a power of two.
@param at - Complex response at a frequency.
*/
export function impulseFrom(length: number, at: (hertz: number) => Complex): Float64Array {
	const real = new Float64Array(length);
	const imaginary = new Float64Array(length);
	for (let bin = 0; bin <= length / 2; bin += 1) {
		const [a, b] = at((bin * 48_000) / length);
		real[bin] = a;
		imaginary[bin] = bin === 0 || bin === length / 2 ? 0 : b;
		if (bin > 0 && bin < length / 2) {
			real[length - bin] = a;
			imaginary[length - bin] = -b;
		}
	}

	transform(real, imaginary, true);
	return real;
}

/** The sum of all channels' sound at the microphone, at 48 kHz of the player. */
export function playRound(round: PlayedRound, responses: ReadonlyMap<string, Float64Array>): Float64Array {
	const length = Math.ceil(round.seconds * 48_000) + 48_000;
	const sum = new Float64Array(length);
	for (const channel of round.channels) {
		const impulse = responses.get(channel);
		if (!impulse) continue;
		const played = roundSamples(round, channel);
		// Two blocks at a time, one as the real and one as the imaginary part: the impulse response is real.
		const block = 2 ** 17 - impulse.length;
		const size = 2 ** 17;
		const hr = new Float64Array(size);
		const hi = new Float64Array(size);
		hr.set(impulse);
		transform(hr, hi);
		const starts = [];
		for (let from = 0; from < played.length; from += block)
			if (played.subarray(from, from + block).some(value => value !== 0)) starts.push(from);
		for (let pair = 0; pair < starts.length; pair += 2) {
			const real = new Float64Array(size);
			const imaginary = new Float64Array(size);
			const [one, other] = [starts[pair]!, starts[pair + 1]];
			real.set(played.subarray(one, one + block));
			if (other !== undefined) imaginary.set(played.subarray(other, other + block));
			transform(real, imaginary);
			for (let k = 0; k < size; k += 1) {
				const [a, b, c, d] = [real[k]!, imaginary[k]!, hr[k]!, hi[k]!];
				real[k] = a * c - b * d;
				imaginary[k] = a * d + b * c;
			}

			transform(real, imaginary, true);
			const add = (from: number, samples: Float64Array) => {
				const end = Math.min(size, length - from);
				for (let k = 0; k < end; k += 1) sum[from + k] = sum[from + k]! + samples[k]!;
			};
			add(one, real);
			if (other !== undefined) add(other, imaginary);
		}
	}

	return sum;
}

export type Recorder = {
	readonly rateHz: number;
	/** How much faster than it says its clock runs, ppm. */
	readonly ppm: number;
	readonly noiseDbfs: number;
	/** Peak of the recording, full scale = 1; the gain follows. */
	readonly peak?: number;
	readonly gain?: number;
	/** Silence before the file starts and after it ends, seconds. */
	readonly before?: number;
	readonly after?: number;
	readonly seed?: number;
};

/** Records: another rate, another clock, noise, a gain. */
export function recordSound(sound: Float64Array, recorder: Recorder): Float64Array {
	const {rateHz, ppm, noiseDbfs, peak = 0.5, before = 1.3, after = 1, seed = 1} = recorder;
	const random = randomFrom(seed);
	// The recorder's second holds more samples of its own when its clock runs fast.
	const trueRate = rateHz * (1 + ppm / 1e6);
	const ratio = 48_000 / trueRate;
	const length = Math.floor((sound.length / 48_000 + before + after) * trueRate);
	const recorded = new Float64Array(length);
	const half = 24;
	const cut = Math.min(1, 1 / ratio) * 0.97;
	const table = kernelTable(half, cut);
	for (let index = 0; index < length; index += 1) {
		const place = (index - before * trueRate) * ratio;
		const first = Math.floor(place) - half + 1;
		if (first + 2 * half < 0 || first >= sound.length) continue;
		const fraction = place - Math.floor(place);
		const row = Math.round(fraction * 1024);
		let value = 0;
		const from = Math.max(0, -first);
		const to = Math.min(2 * half, sound.length - first);
		const at = row * 2 * half;
		for (let tap = from; tap < to; tap += 1) value += sound[first + tap]! * table[at + tap]!;
		recorded[index] = value;
	}

	let largest = 0;
	for (const value of recorded) largest = Math.max(largest, Math.abs(value));
	const gain = recorder.gain ?? peak / largest;
	const rms = 10 ** (noiseDbfs / 20) / Math.SQRT2;
	for (let index = 0; index < length; index += 1) {
		const gaussian = Math.sqrt(-2 * Math.log(random() || 1e-12)) * Math.cos(2 * Math.PI * random());
		recorded[index] = gain * recorded[index]! + rms * gaussian;
	}

	return recorded;
}

/** Windowed sinc at 1025 places between samples; the half-step of the table is −90 dB of the sound. */
function kernelTable(half: number, cut: number): Float64Array {
	const table = new Float64Array(1025 * 2 * half);
	for (let row = 0; row <= 1024; row += 1)
		for (let tap = 0; tap < 2 * half; tap += 1) {
			const x = tap - half + 1 - row / 1024;
			const window = Math.abs(x) >= half ? 0 : 0.5 + 0.5 * Math.cos((Math.PI * x) / half);
			table[row * 2 * half + tap] = x === 0 ? cut : (window * Math.sin(Math.PI * cut * x)) / (Math.PI * x);
		}

	return table;
}

/** The samples as a 16-bit mono WAV file. */
export function wave16(samples: Float64Array, rateHz: number): Uint8Array {
	const bytes = new Uint8Array(44 + 2 * samples.length);
	const view = new DataView(bytes.buffer);
	const text = (at: number, word: string) =>
		bytes.set(
			[...word].map(letter => letter.charCodeAt(0)),
			at,
		);
	text(0, 'RIFF');
	view.setUint32(4, bytes.length - 8, true);
	text(8, 'WAVEfmt ');
	view.setUint32(16, 16, true);
	view.setUint16(20, 1, true);
	view.setUint16(22, 1, true);
	view.setUint32(24, rateHz, true);
	view.setUint32(28, 2 * rateHz, true);
	view.setUint16(32, 2, true);
	view.setUint16(34, 16, true);
	text(36, 'data');
	view.setUint32(40, 2 * samples.length, true);
	for (let index = 0; index < samples.length; index += 1)
		view.setInt16(
			44 + 2 * index,
			Math.max(-32768, Math.min(32767, Math.round(32768 * samples[index]!))),
			true,
		);
	return bytes;
}
