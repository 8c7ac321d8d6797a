import {expect, test} from 'vitest';
import {weightingOfSpectrum} from '../../../source/science/acoustics/band.ts';
import {weightingDb} from '../../../source/science/acoustics/weighting.ts';
import {bandNoise} from '../../../source/science/signal/bandNoise.ts';
import {forwardReal} from '../../../source/science/signal/fourier.ts';
import {crestDb, levelDbfs} from '../../../source/science/signal/level.ts';
import {seededRandom} from '../../../source/science/signal/seededRandom.ts';

const sampleRateHz = 48_000;
const make = (
	fromHertz: number,
	toHertz: number,
	change: {length?: number; crestDb?: number; seed?: number} = {},
) =>
	bandNoise({
		fromHertz,
		toHertz,
		sampleRateHz,
		length: change.length ?? 2 ** 17,
		levelDbfs: -20,
		crestDb: change.crestDb ?? 11,
		random: seededRandom(change.seed ?? 7),
	});

test('bandNoise refuses a band without a line, or beyond half the sample rate', () => {
	expect(() => make(100.01, 100.02, {length: 1024})).toThrow('holds no line of a period of 1024 samples');
	expect(() => make(100, 24_000)).toThrow('must lie between 0 and 24000 Hz, got 100 to 24000 Hz');
	expect(() => make(0, 100)).toThrow('got 0 to 100 Hz');
});

test.each([
	[355, 2818],
	[28.2, 112.2],
	[20, 20_000],
])(
	'bandNoise from %i to %i Hz has its level, its crest and nothing outside the band',
	(fromHertz, toHertz) => {
		const samples = make(fromHertz, toHertz);
		expect(levelDbfs(samples)).toBeCloseTo(-20, 6);
		// Aim 11 dB; pink noise left to itself has 12 to 13 dB or more.
		expect(crestDb(samples)).toBeLessThan(12);
		const spectrum = forwardReal(samples);
		const perHertz = samples.length / sampleRateHz;
		let [inside, outside] = [0, 0];
		for (let bin = 0; bin <= samples.length / 2; bin += 1) {
			const energy = spectrum[2 * bin]! ** 2 + spectrum[2 * bin + 1]! ** 2;
			if (bin >= fromHertz * perHertz && bin <= toHertz * perHertz) inside += energy;
			else outside += energy;
		}

		// Rounding of doubles alone; 24 bits resolve 144 dB.
		expect(10 * Math.log10(outside / inside)).toBeLessThan(-200);
	},
);

// Pink: equal energy in every octave, so −3.01 dB an octave line by line.
test('bandNoise falls by 3.01 dB an octave, line by line', () => {
	const samples = make(355, 2818);
	const spectrum = forwardReal(samples);
	const perHertz = samples.length / sampleRateHz;
	const lineDb = (hertz: number) => {
		const bin = Math.round(hertz * perHertz);
		return 10 * Math.log10(spectrum[2 * bin]! ** 2 + spectrum[2 * bin + 1]! ** 2) + 10 * Math.log10(bin);
	};

	for (const hertz of [510, 700, 1000, 1400, 1990]) expect(lineDb(hertz)).toBeCloseTo(lineDb(600), 6);
});

// The correction that level readings use is computed for an ideal pink band; this is the same for the very lines of
// the signal. The lines end up to one spacing, 0.18 Hz, short of the band's ends, which A weighting at 80 Hz turns into
// 0.02 dB; a meter shows tenths.
test.each([
	[355, 2818],
	[28.2, 112.2],
])('bandNoise from %i to %i Hz is weighted as the ideal pink band is', (fromHertz, toHertz) => {
	const length = 2 ** 18;
	const spectrum = forwardReal(make(fromHertz, toHertz, {length}));
	for (const weighting of ['A', 'C'] as const) {
		let [plain, weighted] = [0, 0];
		for (let bin = 1; bin <= length / 2; bin += 1) {
			const energy = spectrum[2 * bin]! ** 2 + spectrum[2 * bin + 1]! ** 2;
			if (energy < 1e-12) continue;
			plain += energy;
			weighted += energy * 10 ** (weightingDb(weighting, (bin * sampleRateHz) / length) / 10);
		}

		const lineByLineDb = 10 * Math.log10(weighted / plain);
		const idealDb = weightingOfSpectrum(weighting, {kind: 'pink', fromHertz, toHertz});
		expect(Math.abs(lineByLineDb - idealDb)).toBeLessThan(0.03);
	}
});

test('bandNoise joins its end to its start without a click', () => {
	const samples = make(355, 2818);
	const largestStep = samples.reduce(
		(largest, value, index) => (index === 0 ? 0 : Math.max(largest, Math.abs(value - samples[index - 1]!))),
		0,
	);
	expect(Math.abs(samples[0]! - samples.at(-1)!)).toBeLessThanOrEqual(largestStep);
});

test('bandNoise is the same for the same numbers and another for others', () => {
	expect(make(28.2, 112.2, {length: 2 ** 14})).toEqual(make(28.2, 112.2, {length: 2 ** 14}));
	expect(make(28.2, 112.2, {length: 2 ** 14, seed: 8})).not.toEqual(make(28.2, 112.2, {length: 2 ** 14}));
});
