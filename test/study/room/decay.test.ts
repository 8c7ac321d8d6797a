import {expect, test} from 'vitest';
import {eyringDecaySeconds, sabineDecaySeconds, schroederHertz} from '../../../source/study/room/decay.ts';

// Everest, Master Handbook of Acoustics, example 2: 23.3 × 16 × 10 ft, volume 3728 ft³, areas in ft²; T printed to 0.01 s.
// The book's constant 0.049 s/ft is 0.1608 s/m; ours follows from the speed of sound.
const foot = 0.3048;
const speedOfBook = (24 * Math.LN10) / (0.049 / foot);
const areas = [373, 1159, 340].map(area => area * foot ** 2);
const absorption = {
	125: [0.01, 0.29, 0.09],
	250: [0.01, 0.1, 0.28],
	500: [0.015, 0.05, 0.78],
	1000: [0.02, 0.04, 0.84],
	2000: [0.02, 0.07, 0.73],
	4000: [0.02, 0.09, 0.64],
} as const;

test.each([
	[125, 0.49],
	[250, 0.85],
	[500, 0.56],
	[1000, 0.54],
	[2000, 0.54],
	[4000, 0.55],
] as const)('Sabine at %i Hz is %d s, as printed', (hertz, printed) => {
	const surfaces = areas.map((squareMetres, i) => ({squareMetres, absorption: absorption[hertz][i]!}));
	expect(Math.abs(sabineDecaySeconds(3728 * foot ** 3, surfaces, speedOfBook) - printed)).toBeLessThan(
		0.0101,
	);
});

// Recomputed outside this project for the same room with the tile on top of the board, S = 1532 ft².
test('Eyring gives the recomputed 0.4308 s at 125 Hz', () => {
	const whole = 1532 * foot ** 2;
	const mean = 370.4 / 1532;
	const found = eyringDecaySeconds(3728 * foot ** 3, [{squareMetres: whole, absorption: mean}], speedOfBook);
	expect(found).toBeCloseTo(0.4308, 3);
});

test.each([
	[50, 0.4, 178.885],
	[60, 0.3, 141.421],
	[200, 0.4, 89.443],
])('Schroeder frequency of %d m³ and %d s is %d Hz', (volume, decay, hertz) => {
	expect(schroederHertz(volume, decay)).toBeCloseTo(hertz, 3);
});
