import fc from 'fast-check';
import {describe, expect, test} from 'vitest';
import {
	cableLossDb,
	crossSectionSquareMillimetres,
	gaugeDiameterMillimetres,
	longestRunMetres,
	loopResistanceOhms,
	resistanceOhmsPerKilometre,
	thinnestConductor,
} from '../../../source/science/acoustics/cable.ts';

// ASTM B258 gauge table: gauge, diameter mm, area mm², printed Ω/km (as reprinted at wp.1728.org, "American wire gauge").
const printed = [
	[10, 2.5882, 5.2612, 3.28],
	[12, 2.0525, 3.3088, 5.21],
	[14, 1.6277, 2.0809, 8.28],
	[16, 1.2908, 1.3087, 13.17],
	[18, 1.0237, 0.823, 20.94],
	[20, 0.8118, 0.5176, 33.29],
	[22, 0.6438, 0.3255, 52.94],
	[24, 0.5106, 0.2047, 84.2],
] as const;

describe('gauge table of ASTM B258', () => {
	test.each(printed)(
		'gauge %i has the printed diameter, area and resistance',
		(awg, diameter, area, ohmsPerKm) => {
			// Four printed decimals: half a unit of the last place.
			expect(Math.abs(gaugeDiameterMillimetres(awg) - diameter)).toBeLessThanOrEqual(0.00006);
			expect(Math.abs(crossSectionSquareMillimetres({awg}) - area)).toBeLessThanOrEqual(0.00006);
			// The printed resistances were made with a slightly different copper; they agree to 0.1 %.
			expect(Math.abs(resistanceOhmsPerKilometre({awg}) / ohmsPerKm - 1)).toBeLessThanOrEqual(0.001);
		},
	);

	test('gaugeDiameterMillimetres refuses numbers that are no gauge and names them', () => {
		expect(() => gaugeDiameterMillimetres(13.5)).toThrow('got 13.5');
		expect(() => gaugeDiameterMillimetres(Number.NaN)).toThrow('got NaN');
		expect(() => crossSectionSquareMillimetres({areaSquareMillimetres: 0})).toThrow('got 0');
	});
});

// Russell, "Speaker Wire: A History": longest runs in feet for 2, 4, 6 and 8 Ω, loop at most 5 % of rated impedance.
// The published feet are rounded, by up to 4.7 % from the exact rule; hence 5 %.
const russell = [
	[22, 3, 6, 9, 12],
	[20, 5, 10, 15, 20],
	[18, 8, 16, 24, 32],
	[16, 12, 24, 36, 48],
	[14, 20, 40, 60, 80],
	[12, 30, 60, 90, 120],
	[10, 50, 100, 150, 200],
] as const;

test.each(russell)('longestRunMetres follows the published lengths for gauge %i', (awg, ...feet) => {
	for (const [index, impedanceOhms] of [2, 4, 6, 8].entries()) {
		const published = (feet[index] as number) * 0.3048;
		expect(Math.abs(longestRunMetres({awg}, impedanceOhms) / published - 1)).toBeLessThanOrEqual(0.05);
	}
});

test('thinnestConductor gives the first that carries the run, and nothing beyond the thickest', () => {
	// 8 Ω: gauge 16 carries 15.18 m, gauge 18 carries 9.55 m (exact rule).
	expect(thinnestConductor(9.5, 8, 'awg')).toEqual({awg: 18});
	expect(thinnestConductor(9.6, 8, 'awg')).toEqual({awg: 16});
	expect(thinnestConductor(500, 4, 'awg')).toBeUndefined();
	// 1.5 mm² has 11.494 Ω/km, so 4 Ω allow 8.70 m and 2.5 mm² 14.50 m.
	expect(thinnestConductor(8.6, 4, 'metric')).toEqual({areaSquareMillimetres: 1.5});
	expect(thinnestConductor(8.8, 4, 'metric')).toEqual({areaSquareMillimetres: 2.5});
});

test('a loop at the limit loses 20·lg 1.05 = 0.42 dB whatever the conductor', () => {
	fc.assert(
		fc.property(
			fc.integer({min: 8, max: 26}),
			fc.double({min: 2, max: 16, noNaN: true}),
			(awg, impedanceOhms) => {
				const length = longestRunMetres({awg}, impedanceOhms);
				expect(loopResistanceOhms({awg}, length)).toBeCloseTo(0.05 * impedanceOhms, 9);
				expect(cableLossDb({awg}, length, impedanceOhms)).toBeCloseTo(20 * Math.log10(1.05), 9);
			},
		),
	);
});
