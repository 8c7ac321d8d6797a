import {expect, test} from 'vitest';
import {
	fractionalOctaveBand,
	nominalOctave,
	octaveGain,
	roomOctaves,
} from '../../../source/science/signal/octaveBands.ts';

// IEC 61260-1:2014, 5.2 to 5.6 with G = 10^0.3; exact middles and edges as ISO 266 and the standard's annex list them.
test.each([
	[0, 3, 1000, 891.25, 1122.02],
	[-15, 3, 31.623, 28.184, 35.481],
	[-10, 3, 100, 89.125, 112.202],
	[-4, 3, 398.107, 354.813, 446.684],
	[4, 3, 2511.886, 2238.721, 2818.383],
	[-4, 1, 63.096, 44.668, 89.125],
])('band %i of %i an octave has the published middle and edges', (index, perOctave, middle, from, to) => {
	const band = fractionalOctaveBand(index, perOctave);
	expect(band.middleHertz).toBeCloseTo(middle, 2);
	expect(band.fromHertz).toBeCloseTo(from, 2);
	expect(band.toHertz).toBeCloseTo(to, 2);
});

test('bands of an even division have their edge, not their middle, at 1 kHz', () => {
	expect(fractionalOctaveBand(0, 2).fromHertz).toBeCloseTo(1000, 9);
});

test('octaves of a room carry their nominal names and touch each other', () => {
	expect(roomOctaves.map(({middleHertz}) => nominalOctave(middleHertz))).toEqual([
		63, 125, 250, 500, 1000, 2000, 4000, 8000,
	]);
	for (const [index, {fromHertz}] of roomOctaves.entries())
		if (index > 0) expect(fromHertz).toBeCloseTo(roomOctaves[index - 1]!.toHertz, 6);
});

// IEC 61260-1, class 1: least and most attenuation, dB, at G^Ω from the middle. The limits of the first edition (IEC 61260:1995,
// table 1) are narrower than those of 2014, so that whoever keeps them keeps both. From memory.
test.each([
	[0, -0.3, 0.3],
	[1 / 8, -0.3, 0.4],
	[1 / 4, -0.3, 0.6],
	[3 / 8, -0.3, 1.3],
	[1 / 2, 2, 5],
	[1, 17.5, Number.POSITIVE_INFINITY],
	[2, 42, Number.POSITIVE_INFINITY],
	[3, 61, Number.POSITIVE_INFINITY],
	[4, 70, Number.POSITIVE_INFINITY],
])('octaveGain lies within the limits of class 1 at %f octaves from the middle', (away, least, most) => {
	for (const band of roomOctaves)
		for (const sign of [-1, 1]) {
			const gain = octaveGain(band, band.middleHertz * 10 ** (0.3 * away * sign));
			const attenuation = -20 * Math.log10(Math.max(gain, 1e-20));
			expect(attenuation).toBeGreaterThanOrEqual(least);
			expect(attenuation).toBeLessThanOrEqual(most);
		}
});

test('octaveGain lets through half of the power at its edges, and neighbours add up to all of it', () => {
	for (const [index, band] of roomOctaves.entries()) {
		expect(octaveGain(band, band.fromHertz) ** 2).toBeCloseTo(0.5, 12);
		const next = roomOctaves[index + 1];
		if (!next) continue;
		for (const share of [0.1, 0.3, 0.5, 0.9]) {
			const hertz = band.middleHertz * 10 ** (0.3 * share);
			expect(octaveGain(band, hertz) ** 2 + octaveGain(next, hertz) ** 2).toBeCloseTo(1, 12);
		}
	}
});
