import {expect, test} from 'vitest';
import {cramerSpeed, isoSpeed, speedOfSound} from '../../../source/science/acoustics/air.ts';

test('speedOfSound assumes 20 °C where nothing is given, and says so', () => {
	const speed = speedOfSound();
	expect(speed.metresPerSecond).toBeCloseTo(343.2, 9);
	expect(speed.formula).toBe('ISO 9613-1 at an assumed 20 °C');
	expect(speed.isTemperatureKnown).toBe(false);
	// dc/dT at 20 °C is about 0.585 m/s per °C (343.2 / 2 / 293.15); 3 °C of doubt.
	expect(speed.sigma).toBeCloseTo(3 * 0.5854, 3);
});

test('speedOfSound names ISO 9613-1 where humidity is unknown and Cramer where it is known', () => {
	expect(speedOfSound({temperatureCelsius: 22.5}).formula).toBe('ISO 9613-1 at 22.5 °C');
	const humid = speedOfSound({temperatureCelsius: 22.5, humidityPercent: 45});
	expect(humid.formula).toBe('Cramer 1993 at 22.5 °C and 45 % humidity');
	expect(humid.sigma).toBeLessThan(0.7);
});

test('speedOfSound leaves Cramer outside its range, and says why', () => {
	const cold = speedOfSound({temperatureCelsius: -5, humidityPercent: 50});
	expect(cold.metresPerSecond).toBe(isoSpeed(-5));
	expect(cold.formula).toBe(
		'ISO 9613-1 at −5 °C, because Cramer 1993 covers 0 to 30 °C and 75 to 102 kPa only',
	);
	expect(speedOfSound({humidityPercent: 50, pressurePascals: 60_000}).formula).toContain('ISO 9613-1');
});

// IEC 61094-2:2009, Annex F, Table F.1, printed to five decimals; half a unit of the last is the source's rounding.
test.each([
	[23, 50, 101_325, 345.86652],
	[20, 65, 80_000, 344.38267],
])(
	'cramerSpeed matches IEC 61094-2 Table F.1 at %f °C, %f %%, %f Pa',
	(celsius, humidity, pascals, printed) => {
		expect(Math.abs(cramerSpeed(celsius, humidity, pascals) - printed)).toBeLessThanOrEqual(0.000_005_1);
	},
);

// ISO 9613-1:1993, eq. A.5, evaluated independently in double precision and rounded to 1e-4 m/s.
test.each([
	[0, 331.2859],
	[10, 337.2956],
	[20, 343.2],
	[30, 349.0046],
])('isoSpeed matches ISO 9613-1 at %f °C', (celsius, expected) => {
	expect(Math.abs(isoSpeed(celsius) - expected)).toBeLessThanOrEqual(0.000_051);
});

// Cramer's formula evaluated independently (numpy) at 101 325 Pa, rounded to 1e-4 m/s.
test.each([
	[0, 0, 331.4477],
	[15, 50, 340.8757],
	[22, 100, 345.9502],
	[30, 100, 351.4698],
])('cramerSpeed matches an independent evaluation at %f °C and %f %%', (celsius, humidity, expected) => {
	expect(Math.abs(cramerSpeed(celsius, humidity) - expected)).toBeLessThanOrEqual(0.000_051);
});

test('sound runs about 1.13 ft or 0.343 m in a millisecond', () => {
	// The rule of thumb of the trade, with three digits: common practice, no source.
	const {metresPerSecond} = speedOfSound();
	expect(metresPerSecond / 1000).toBeCloseTo(0.343, 3);
	expect(metresPerSecond / 1000 / 0.3048).toBeCloseTo(1.13, 2);
});
