import {expect, test} from 'vitest';
import {
	fractionalOctaveBand,
	nominalOctave,
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
