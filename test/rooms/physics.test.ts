import {expect, test} from 'vitest';
import {type Box, distanceBetween, octaves, openSpace, type Point} from './physics/box.ts';
import {reverberationTimes, wallsFor} from './physics/decay.ts';
import {axesOf, eachImage} from './physics/images.ts';
import {impulseResponse} from './physics/impulse.ts';
import {drawsOf} from './physics/random.ts';
import {magnitudeAt} from './physics/spectrum.ts';
import {imageSum, pathsOf, responseAt} from './physics/transfer.ts';

const everyOctave = (walls: readonly number[]) => octaves.map(() => walls);
const hard: Box = {
	sizeMetres: [4, 5.5, 2.4],
	speedOfSound: 344,
	decayPerSecond: 4,
	longestSeconds: 1.1,
	reflections: everyOctave([1, 1, 1, 1, 1, 1]),
};
const low = {rate: 4000, lowestHertz: 15, highestHertz: 300};

test('draws are the same for a seed and spread as they should', () => {
	const [a, b] = [drawsOf(7), drawsOf(7)];
	expect(Array.from({length: 5}, () => a.uniform(0, 1))).toEqual(
		Array.from({length: 5}, () => b.uniform(0, 1)),
	);
	const values = Array.from({length: 20_000}, () => a.gauss(2));
	// Standard errors of mean and deviation: 2/√20000 = 0.014 and 0.010; four of them.
	expect(Math.abs(values.reduce((sum, value) => sum + value, 0) / values.length)).toBeLessThan(0.057);
	expect(Math.sqrt(values.reduce((sum, value) => sum + value ** 2, 0) / values.length)).toBeCloseTo(2, 1);
});

test('response of a box peaks at its modes', () => {
	// Closed form of a rectangular room: f = c/2·√((l/L)² + (m/W)² + (n/H)²) at 344 m/s, axial, tangential and oblique.
	const analytic = [31.3, 43.0, 53.2, 62.5, 71.7, 83.6, 89.2];
	const frequencies = Float64Array.from({length: 3250}, (_, index) => 28 + index * 0.02);
	const corner = responseAt(pathsOf(hard, {at: [0.05, 0.05, 0.05]}, [3.95, 5.45, 2.35], low), frequencies);
	for (const mode of analytic) {
		const [from, to] = [Math.round((mode - 1.5 - 28) / 0.02), Math.round((mode + 1.5 - 28) / 0.02)];
		let best = Math.max(0, from);
		for (let index = best; index <= to; index++)
			if (magnitudeAt(corner, index) > magnitudeAt(corner, best)) best = index;
		expect(Math.abs(frequencies[best]! - mode), `${mode} Hz`).toBeLessThan(0.3);
	}
});

test('without walls the level falls with the distance and the phase with the time', () => {
	for (const metres of [1, 2, 4.7]) {
		const {re, im} = responseAt(pathsOf(openSpace(343), {at: [0, 0, 0]}, [metres, 0, 0], low), [20, 80, 250]);
		for (const [index, hertz] of [20, 80, 250].entries()) {
			// Cubic spreading at a rate of 4 kHz: below 0.1 % in amplitude at 250 Hz.
			expect(Math.hypot(re[index]!, im[index]!) * metres).toBeCloseTo(1, 2);
			const turned = Math.atan2(im[index]!, re[index]!) + (2 * Math.PI * hertz * metres) / 343;
			expect(Math.abs(Math.sin(turned))).toBeLessThan(1e-3);
		}
	}
});

test('a dipole is silent at its side and turned behind it', () => {
	const at: Point = [0, 0, 0];
	const gain = (to: Point) =>
		responseAt(pathsOf(openSpace(343), {at, dipoleAxis: [0, 1, 0]}, to, low), [1e-6]).re[0]!;
	expect(gain([2, 0, 0])).toBeCloseTo(0, 6);
	expect(gain([0, 2, 0])).toBeCloseTo(0.5, 6);
	expect(gain([0, -2, 0])).toBeCloseTo(-0.5, 6);
});

test('first arrivals in the room of Allen and Berkley', () => {
	// Their example (Journal of the Acoustical Society of America 65, 1979, 943), lengths in sample periods; delays and products recomputed from the formula.
	const box: Box = {
		sizeMetres: [80, 120, 100],
		speedOfSound: 1,
		longestSeconds: 151,
		reflections: everyOctave([0.9, 0.9, 0.9, 0.9, 0.7, 0.7]),
	};
	const axes = axesOf(box, [30, 100, 40], [50, 10, 60], [0]);
	const [xs, ys, zs] = axes;
	const arrivals: Array<[number, number]> = [];
	eachImage(box, axes, (metres, x, y, z) => {
		arrivals.push([metres, xs.factors[0]![x]! * ys.factors[0]![y]! * zs.factors[0]![z]!]);
	});
	arrivals.sort((a, b) => a[0] - b[0]);
	const wanted = [
		[94.3398, 1],
		[113.5782, 0.9],
		[122.0656, 0.9],
		[122.0656, 0.9],
		[133.0413, 0.9],
		[136.0147, 0.7],
		[136.0147, 0.7],
		[137.4773, 0.81],
		[137.4773, 0.81],
		[150, 0.63],
		[150, 0.63],
	];
	for (const [index, [delay, factor]] of wanted.entries()) {
		expect(arrivals[index]![0]).toBeCloseTo(delay!, 3);
		expect(arrivals[index]![1]).toBeCloseTo(factor!, 10);
	}
});

test('sum of images of a hard room with uniform damping is its modal series', () => {
	// Modal transfer function (Kuttruff, Room Acoustics, eq. 3.10), 6 × 4 × 2.5 m, T = 0.4 s, computed as a modal series;
	// given as |G| in 1/m for a source that makes 1/(4πr) in the free field, and as dB against the free field at 1 m.
	const box: Box = {
		sizeMetres: [6, 4, 2.5],
		speedOfSound: 343,
		decayPerSecond: (3 * Math.LN10) / 0.4,
		longestSeconds: 0.65,
		reflections: everyOctave([1, 1, 1, 1, 1, 1]),
	};
	const published = [
		[20, 8.164],
		[28.5833, 8.242],
		[35, -8.15],
		[42.875, -3.698],
		[57.1667, 9.556],
		[70, -1.566],
		[80, -5.7],
	] as const;
	const frequencies = published.map(([hertz]) => hertz);
	const paths = pathsOf(box, {at: [0.3, 0.4, 0.3]}, [3.6, 2.1, 1.2], low);
	const fast = responseAt(paths, frequencies);
	const slow = imageSum(box, {at: [0.3, 0.4, 0.3]}, [3.6, 2.1, 1.2], frequencies);
	for (const [index, [, decibels]] of published.entries()) {
		// Cut off after 0.65 s the rest of the sum is e^(−17.27·0.65), 1e-5 of the start, times the growing number of images.
		for (const one of [fast, slow])
			expect(Math.abs(20 * Math.log10(magnitudeAt(one, index)) - decibels)).toBeLessThan(0.06);
	}
});

test('sampled paths give the plain sum over images, with walls that change over frequency', () => {
	const draws = drawsOf('walls');
	const box = wallsFor({
		sizeMetres: [4.1, 5.2, 2.5],
		speedOfSound: 343,
		seconds: 0.25,
		shares: octaves.map(() => Array.from({length: 6}, () => draws.uniform(0.3, 2))),
	});
	const source = {at: [0.6, 0.4, 0.5] as Point};
	const frequencies = [17, 31.5, 44, 80, 120, 233, 300];
	const fast = responseAt(pathsOf(box, source, [2.2, 3.6, 1.1], low), frequencies);
	const slow = imageSum(box, source, [2.2, 3.6, 1.1], frequencies);
	for (const index of frequencies.keys()) {
		const apart = Math.hypot(fast.re[index]! - slow.re[index]!, fast.im[index]! - slow.im[index]!);
		expect(apart / 0.28).toBeLessThan(0.01);
	}
});

test('walls are scaled to the wanted reverberation time, at other places too', () => {
	for (const seconds of [0.2, 0.4, 0.6]) {
		const draws = drawsOf(`decay ${seconds}`);
		const box = wallsFor({
			sizeMetres: [draws.uniform(3.4, 5.4), draws.uniform(4.2, 7), 2.5],
			speedOfSound: 343,
			seconds,
			shares: octaves.map(() => Array.from({length: 6}, () => draws.uniform(0.3, 2))),
		});
		const times = reverberationTimes(box, [0.4, 0.5, 0.3], [2, 3.1, 1.1], [1, 4, 6]);
		// Between places in one room the early decay differs by some percent.
		for (const time of times) expect(Math.abs(time / seconds - 1)).toBeLessThan(0.12);
	}
});

test('impulse response at 48 kHz begins at the distance and holds the low response', () => {
	const box = wallsFor({
		sizeMetres: [4.1, 5.2, 2.5],
		speedOfSound: 343,
		seconds: 0.2,
		shares: octaves.map(() => [1, 0.6, 1.4, 0.8, 1.1, 0.5]),
	});
	const source = {at: [1.2, 0.4, 1] as Point};
	const receiver: Point = [2, 3.4, 1.1];
	const response = impulseResponse(box, source, receiver, 48_000);
	const direct = (48_000 * distanceBetween(source.at, receiver)) / 343;
	const peak = response.reduce(
		(best, value, index) => (Math.abs(value) > Math.abs(response[best]!) ? index : best),
		0,
	);
	expect(Math.abs(peak - direct)).toBeLessThan(1);
	const frequencies = [40, 80, 160];
	const wanted = imageSum(box, source, receiver, frequencies);
	for (const [index, hertz] of frequencies.entries()) {
		let re = 0;
		let im = 0;
		for (const [at, value] of response.entries()) {
			re += value * Math.cos((-2 * Math.PI * hertz * at) / 48_000);
			im += value * Math.sin((-2 * Math.PI * hertz * at) / 48_000);
		}

		expect(Math.hypot(re - wanted.re[index]!, im - wanted.im[index]!) / 0.3).toBeLessThan(0.02);
	}
});
