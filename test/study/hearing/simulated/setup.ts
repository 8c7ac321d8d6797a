import {type PlayedRound, playedRound} from '../../../../source/study/hearing/round.ts';
import type {RoundSize} from '../../../../source/study/hearing/roundCode.ts';
import {impulseFrom} from './play.ts';
import {type Complex, multiply, type Place, pathsOf, reflectionFor} from './room.ts';
import {transform} from './transform.ts';

const size: Place = [5.3, 4.2, 2.45];
export const speed = 343;
const length = 2 ** 15;
const places: Readonly<Record<string, Place>> = {
	FL: [1.3, 0.55, 1.05],
	FR: [4.1, 0.6, 1.0],
	FC: [2.7, 0.4, 0.8],
	SiL: [0.3, 3.1, 1.4],
	SiR: [5.05, 2.9, 1.45],
	sub1: [0.4, 0.35, 0.3],
	sub2: [4.95, 3.8, 0.3],
};

/** What a test changes in the setup. */
export type Setup = {
	readonly size?: RoundSize;
	readonly channels?: readonly string[];
	readonly seat?: Place;
	readonly decaySeconds?: number;
	readonly crossoverHertz?: number;
	/** By channel or sub: sign, delay and level on the way. */
	readonly sign?: Readonly<Record<string, number>>;
	readonly delayMs?: Readonly<Record<string, number>>;
	readonly gainDb?: Readonly<Record<string, number>>;
	/** Which speaker a channel plays through. */
	readonly through?: Readonly<Record<string, ReadonlyArray<readonly [speaker: string, gain: number]>>>;
	readonly subs?: readonly string[];
	readonly lfeGainDb?: number;
	readonly lfeLowPassHertz?: number;
};

/** Second-order Butterworth high-pass and fourth-order Linkwitz-Riley low-pass, as bass management usually has them. */
export function highPass(hertz: number, corner: number): Complex {
	const x = hertz / corner;
	return divide([-x * x, 0], [1 - x * x, Math.SQRT2 * x]);
}

export function lowPass(hertz: number, corner: number): Complex {
	const x = hertz / corner;
	const one = divide([1, 0], [1 - x * x, Math.SQRT2 * x]);
	return multiply(one, one);
}

function divide([a, b]: Complex, [c, d]: Complex): Complex {
	const size2 = c * c + d * d;
	return [(a * c + b * d) / size2, (b * c - a * d) / size2];
}

const onlyReal = (value: number): Complex => [value, 0];

/** Response of one speaker at the seat, without filters, as an impulse response at 48 kHz. */
function roomImpulse(from: Place, to: Place, decaySeconds: number): Float64Array {
	const reflection = reflectionFor(size, decaySeconds);
	const impulse = new Float64Array(length);
	const half = 12;
	for (const {seconds, gain, bounces} of pathsOf(
		{size, reflection: () => reflection, speed},
		from,
		to,
		0.5,
	)) {
		const place = seconds * 48_000;
		const first = Math.floor(place) - half + 1;
		const amount = gain * reflection ** bounces;
		const fraction = place - Math.floor(place);
		const sine = Math.sin(Math.PI * fraction);
		for (let tap = 0; tap < 2 * half; tap += 1) {
			const at = first + tap;
			if (at < 0 || at >= length) continue;
			const x = tap - half + 1 - fraction;
			const sinc = Math.abs(x) < 1e-9 ? 1 : ((tap + half) % 2 === 0 ? 1 : -1) * (sine / (Math.PI * x));
			impulse[at] = impulse[at]! + amount * sinc * (0.5 + 0.5 * Math.cos((Math.PI * x) / half));
		}
	}

	return impulse;
}

const rooms = new Map<string, Float64Array>();
function roomOnce(from: Place, to: Place, decaySeconds: number): Float64Array {
	const key = JSON.stringify([from, to, decaySeconds]);
	let impulse = rooms.get(key);
	if (!impulse) {
		impulse = roomImpulse(from, to, decaySeconds);
		rooms.set(key, impulse);
	}

	return impulse;
}

/** Distance of a speaker to the seat, metres. */
export function distanceOf(id: string, seat: Place = [2.6, 3.05, 1.1]): number {
	const [x, y, z] = places[id]!;
	return Math.hypot(x - seat[0], y - seat[1], z - seat[2]);
}

/** A round and each channel's impulse response: bass management, boxes, settings, room. */
export function simulated(setup: Setup = {}): {round: PlayedRound; responses: Map<string, Float64Array>} {
	const {seat = [2.6, 3.05, 1.1], decaySeconds = 0.3, crossoverHertz = 80, subs = ['sub1']} = setup;
	const round = playedRound(setup.size ?? 'two', setup.channels ?? ['FL', 'FR']);
	const responses = new Map<string, Float64Array>();
	const shape = (id: string, hertz: number): Complex => {
		const delay = (setup.delayMs?.[id] ?? 0) / 1000;
		const gain = (setup.sign?.[id] ?? 1) * 10 ** ((setup.gainDb?.[id] ?? 0) / 20);
		return [gain * Math.cos(2 * Math.PI * hertz * delay), -gain * Math.sin(2 * Math.PI * hertz * delay)];
	};
	const filtered = (id: string, filter: (hertz: number) => Complex) => {
		const room = roomOnce(places[id]!, seat, decaySeconds);
		const impulse = impulseFrom(2 * length, hertz => multiply(shape(id, hertz), filter(hertz)));
		return convolved(room, impulse);
	};
	for (const channel of round.channels) {
		const sum = new Float64Array(length);
		const add = (samples: Float64Array) => {
			for (let index = 0; index < length; index += 1) sum[index] = sum[index]! + samples[index]!;
		};
		if (channel.startsWith('LFE')) {
			const raise = 10 ** ((setup.lfeGainDb ?? 10) / 20);
			for (const sub of subs)
				add(
					filtered(sub, hertz =>
						multiply(multiply(lowPass(hertz, setup.lfeLowPassHertz ?? 120), subBox(hertz)), onlyReal(raise)),
					),
				);
		} else {
			for (const [speaker, gain] of setup.through?.[channel] ?? [[channel, 1] as const])
				add(
					filtered(speaker, hertz =>
						multiply(multiply(highPass(hertz, crossoverHertz), highPass(hertz, 55)), onlyReal(gain)),
					),
				);
			for (const sub of subs)
				add(filtered(sub, hertz => multiply(lowPass(hertz, crossoverHertz), subBox(hertz))));
		}

		responses.set(channel, sum);
	}

	return {round, responses};
}

/** A sub: 25 Hz, second order. */
const subBox = (hertz: number) => highPass(hertz, 25);

/** Product of two spectra, by the test's own transform; the filters' ringing wraps where it is 100 dB down. */
function convolved(room: Float64Array, filter: Float64Array): Float64Array {
	const count = filter.length;
	const [ar, ai, br, bi] = [0, 0, 0, 0].map(() => new Float64Array(count)) as [
		Float64Array,
		Float64Array,
		Float64Array,
		Float64Array,
	];
	ar.set(room);
	br.set(filter);
	transform(ar, ai);
	transform(br, bi);
	for (let k = 0; k < count; k += 1) {
		const [a, b] = multiply([ar[k]!, ai[k]!], [br[k]!, bi[k]!]);
		ar[k] = a;
		ai[k] = b;
	}

	transform(ar, ai, true);
	return ar.slice(0, length);
}
