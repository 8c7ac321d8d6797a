import {expect, test} from 'vitest';
import {synchronisedSweep} from '../../../source/science/signal/sweep.ts';
import {clarityFrom} from '../../../source/study/hearing/clarity.ts';
import {octaveDecays} from '../../../source/study/hearing/decay.ts';
import {decayCurve} from '../../../source/study/hearing/decayCurve.ts';
import {randomFrom} from './simulated/room.ts';

const rate = 48_000;

/** Noise that dies away with one decay time, as a diffuse room does, above a floor. */
function dyingNoise(seconds: number, decaySeconds: number, floorDb: number, seed = 1): Float64Array {
	const random = randomFrom(seed);
	const gaussian = () => Math.sqrt(-2 * Math.log(random() || 1e-9)) * Math.cos(2 * Math.PI * random());
	const floor = 10 ** (floorDb / 20);
	return Float64Array.from({length: Math.round(seconds * rate)}, (_, index) => {
		const fall = 10 ** ((-3 * index) / rate / decaySeconds);
		return fall * gaussian() + floor * gaussian();
	});
}

const powerOf = (samples: Float64Array) => ({powers: samples.map(value => value * value), rateHz: rate});

// ISO 3382-1:2009, 5.3 and Annex A: closed forms of a pure exponential with decay time T, k = 6·ln 10/T:
// C50 = 10·lg(e^(0.05k) − 1), C80 alike, D50 = 1 − e^(−0.05k), Ts = 1/k. Printed to their last digit in acoustics texts
// for T = 1 s (C50 −0.02 dB, C80 3.05 dB, D50 0.499, Ts 72.4 ms); the others computed from the same formulas.
test.each([
	[0.2, 14.8604, 23.9827, 0.968377, 14.4765],
	[0.4, 6.6496, 11.717, 0.822172, 28.953],
	[1, -0.0206, 3.0534, 0.498813, 72.3824],
])('clarity of an exponential of %f s has its closed form', (decaySeconds, c50, c80, d50, centreMs) => {
	const pure = Float64Array.from(
		{length: 6 * decaySeconds * rate},
		(_, index) => 10 ** ((-6 * index) / rate / decaySeconds),
	);
	const clarity = clarityFrom({powers: pure, rateHz: rate});
	// The sum over samples stands for the integral: a sample is 0.02 ms.
	expect(clarity.c50Db).toBeCloseTo(c50, 2);
	expect(clarity.c80Db).toBeCloseTo(c80, 2);
	expect(clarity.d50).toBeCloseTo(d50, 3);
	expect(clarity.centreTimeMs).toBeCloseTo(centreMs, 1);
});

// Closed form: a power that falls by one exponential falls by 60 dB in T, whatever part of it is looked at.
test.each([0.15, 0.3, 0.6, 1.2])('an exponential of %f s has that EDT, T20 and T30', decaySeconds => {
	const powers = Float64Array.from(
		{length: Math.round(1.2 * decaySeconds * 400)},
		(_, index) => 10 ** ((-6 * index) / 400 / decaySeconds),
	);
	const {rangeDb, secondsBetween} = decayCurve({powers, rateHz: 400}, 0.0025);
	expect(rangeDb).toBeGreaterThan(55);
	// A range of 72 dB whose last fifth counts as noise: 57 dB above it 35 dB are exact to 1e-2.
	for (const [top, bottom] of [
		[0, -10],
		[-5, -25],
		[-5, -35],
	] as const)
		expect(Math.abs(secondsBetween(top, bottom)! / decaySeconds - 1)).toBeLessThan(0.01);
});

// Two exponentials, as in coupled rooms: the backward integral is A1·T1·e^(−k1·t) + A2·T2·e^(−k2·t) in closed form, and the line
// through it from −5 to −25 dB is that of the sum.
test('a decay that bends has the slope of its closed form between two levels', () => {
	const [fast, slow, share] = [0.2, 0.8, 0.02];
	const rate = 1000;
	const at = (seconds: number) => 10 ** ((-6 * seconds) / fast) + share * 10 ** ((-6 * seconds) / slow);
	const left = (seconds: number) =>
		fast * 10 ** ((-6 * seconds) / fast) + share * slow * 10 ** ((-6 * seconds) / slow);
	const {secondsBetween} = decayCurve(
		{
			powers: Float64Array.from({length: 2 * rate}, (_, index) => at(index / rate)),
			rateHz: rate,
		},
		0,
	);
	for (const [top, bottom] of [
		[0, -10],
		[-5, -25],
	] as const) {
		const points = Array.from({length: 2000}, (_, index) => index / 1000)
			.map(seconds => [seconds, 10 * Math.log10(left(seconds) / left(0))] as const)
			.filter(([, level]) => level <= top && level >= bottom);
		const mean = (of: 0 | 1) => points.reduce((sum, point) => sum + point[of], 0) / points.length;
		const [x, y] = [mean(0), mean(1)];
		const above = points.reduce((sum, point) => sum + (point[0] - x) * (point[1] - y), 0);
		const below = points.reduce((sum, point) => sum + (point[0] - x) ** 2, 0);
		// Both go by steps of 1 ms: one step more or less at an end of some 35 moves the slope by less than half a percent.
		expect(Math.abs(secondsBetween(top, bottom)! / ((-60 * below) / above) - 1)).toBeLessThan(0.005);
	}
});

test.each([0.2, 0.35, 0.6])(
	'decay of noise that dies away in %f s comes out within a twentieth, floor and all',
	decaySeconds => {
		for (const seed of [1, 2, 3]) {
			const {rangeDb, secondsBetween} = decayCurve(powerOf(dyingNoise(1.5, decaySeconds, -55, seed)));
			expect(rangeDb).toBeGreaterThan(45);
			// Wide-band noise of half a second leaves some 2 % of scatter to the slope between −5 and −25 dB.
			expect(Math.abs(secondsBetween(-5, -25)! / decaySeconds - 1)).toBeLessThan(0.05);
			expect(Math.abs(secondsBetween(-5, -35)! / decaySeconds - 1)).toBeLessThan(0.05);
		}
	},
);

test('a range too short for a figure leaves it out: 30 dB allow EDT alone', () => {
	const samples = dyingNoise(1.3, 0.4, -30);
	const law = synchronisedSweep(15, 20_000, 2);
	const sweep = {channel: 'FL', pass: 'main', law, atSeconds: 0, pauseSeconds: 1.3, levelDbfs: -20} as const;
	const [decay] = octaveDecays({sweep, rateHz: rate, samples, zero: 0}, 0).filter(
		({hertz}) => hertz === 2000,
	);
	expect(decay!.rangeDb).toBeGreaterThan(25);
	expect(decay!.rangeDb).toBeLessThan(35);
	expect(decay!.edtSeconds).toBeDefined();
	expect(decay).not.toHaveProperty('t20Seconds');
	expect(decay).not.toHaveProperty('t30Seconds');
});

test('silence has no decay', () => {
	const {secondsBetween} = decayCurve(powerOf(new Float64Array(rate)));
	expect(secondsBetween(-5, -25)).toBeUndefined();
});
