import fc from 'fast-check';
import {expect, test} from 'vitest';
import {
	boxFilter,
	closedBox,
	closedBoxResonanceHz,
	halfPowerHz,
	ventedBoxCornerHz,
} from '../../../../source/science/acoustics/filters/box.ts';
import {filterLevelDb} from '../../../../source/science/acoustics/filters/response.ts';

test('boxFilter changes nothing when no limit is known', () => {
	expect(filterLevelDb(boxFilter({}), 20)).toBe(0);
	expect(halfPowerHz({})).toBeUndefined();
});

// Small, JAES 20 (1972) 798–808: f3/fc and the level at resonance, 20·lg Q. Recomputed from his formula, printed to
// six and four decimals.
const small = [
	[0.5, 1.553774, -6.0206],
	[0.57735, 1.27202, -4.7712],
	[0.6, 1.209068, -4.437],
	[Math.SQRT1_2, 1, -3.0103],
	[0.8, 0.89716, -1.9382],
	[0.9, 0.829469, -0.9151],
	[1, 0.786151, 0],
	[1.1, 0.756747, 0.8279],
	[1.2, 0.735815, 1.5836],
] as const;

test.each(small)('closedBoxResonanceHz inverts f3/fc of Small for Q %f', (totalQ, ratio, levelDb) => {
	expect(1 / closedBoxResonanceHz(1, 0.5, totalQ)).toBeCloseTo(ratio, 5);
	expect(Math.abs(filterLevelDb(closedBox(50, totalQ), 50) - levelDb)).toBeLessThan(1e-4);
});

// Same source: peak 20·lg(Q²/√(Q² − ¼)) above resonance for Q > 0.7071.
test.each([
	[0.9, 0.6878],
	[1.2, 2.4118],
])('closedBox of Q %f peaks as Small states', (totalQ, peakDb) => {
	let highest = -100;
	for (let f = 40; f < 400; f *= 1.0005) highest = Math.max(highest, filterLevelDb(closedBox(50, totalQ), f));
	expect(Math.abs(highest - peakDb)).toBeLessThan(1e-4);
});

const drops = [
	[3, 10 * Math.log10(0.5)],
	[6, 10 * Math.log10(0.25)],
	[10, -10],
] as const;

test('boxFilter is down by the stated drop at the stated limit, whatever box and Q', () => {
	fc.assert(
		fc.property(
			fc.double({min: 15, max: 200, noNaN: true}),
			fc.constantFrom(...drops),
			fc.constantFrom('closed' as const, 'vented' as const),
			fc.double({min: 0.4, max: 1.6, noNaN: true}),
			(lowLimitHertz, [lowLimitDropDb, levelDb], box, totalQ) => {
				const filter = boxFilter({lowLimitHertz, lowLimitDropDb, box, totalQ});
				expect(filterLevelDb(filter, lowLimitHertz)).toBeCloseTo(levelDb, 6);
			},
		),
	);
});

test('halfPowerHz is where boxFilter is 3.01 dB down', () => {
	for (const box of ['closed', 'vented'] as const) {
		for (const lowLimitDropDb of [3, 6, 10] as const) {
			const data = {lowLimitHertz: 45, lowLimitDropDb, box, totalQ: 0.9};
			expect(filterLevelDb(boxFilter(data), halfPowerHz(data)!)).toBeCloseTo(-3.0103, 4);
		}
	}
});

test('ventedBoxCornerHz leaves a half-power limit where it is', () => {
	expect(ventedBoxCornerHz(40, 0.5)).toBeCloseTo(40, 12);
});
