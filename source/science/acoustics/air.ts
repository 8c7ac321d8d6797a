/** What is known of the air; every field may be missing. */
export type AirState = {
	readonly temperatureCelsius?: number;
	readonly humidityPercent?: number;
	readonly pressurePascals?: number;
};

export type SpeedOfSound = {
	readonly metresPerSecond: number;
	/** The formula in words, for tables and reports. */
	readonly formula: string;
	/** Standard uncertainty that follows from the temperature's, m/s. */
	readonly sigma: number;
	/** The temperature computed with, °C. */
	readonly temperatureCelsius: number;
	/** False where 20 °C stood in for a temperature that nobody gave. */
	readonly isTemperatureKnown: boolean;
};

const absoluteZeroCelsius = -273.15;
const standardPressurePascals = 101_325;
/** Mole fraction of carbon dioxide that IEC 61094-2 recommends for laboratory air. */
const carbonDioxideFraction = 0.0004;
/** A household thermometer reads to about 1 °C; a living room unmeasured is 20 ± 3 °C. Common practice, no source. */
const readTemperatureSigma = 1;
const assumedTemperatureSigma = 3;
const assumedTemperatureCelsius = 20;

/**
Speed of sound in the room's air.

Cramer's formula where humidity is known and the air lies in its range (0 to 30 °C, 75 to 102 kPa); ISO 9613-1 otherwise.
Pressure counts as 101 325 Pa and temperature as 20 °C where not given.

@param air - °C (above absolute zero), % relative humidity, Pa.
@returns Metres per second, with the formula's name and the standard uncertainty that the temperature causes.
*/
export function speedOfSound(air: AirState = {}): SpeedOfSound {
	const {humidityPercent, pressurePascals = standardPressurePascals} = air;
	const isTemperatureKnown = air.temperatureCelsius !== undefined;
	const temperatureCelsius = air.temperatureCelsius ?? assumedTemperatureCelsius;
	const isInCramersRange =
		temperatureCelsius >= 0 &&
		temperatureCelsius <= 30 &&
		pressurePascals >= 75_000 &&
		pressurePascals <= 102_000;
	const at = isTemperatureKnown ? `${formatted(temperatureCelsius)} °C` : 'an assumed 20 °C';
	const usesCramer = humidityPercent !== undefined && isInCramersRange;
	const metresPerSecond = usesCramer
		? cramerSpeed(temperatureCelsius, humidityPercent, pressurePascals)
		: isoSpeed(temperatureCelsius);
	const formula = usesCramer
		? `Cramer 1993 at ${at} and ${formatted(humidityPercent)} % humidity`
		: humidityPercent === undefined
			? `ISO 9613-1 at ${at}`
			: `ISO 9613-1 at ${at}, because Cramer 1993 covers 0 to 30 °C and 75 to 102 kPa only`;
	// ISO 9613-1, eq. A.5, differentiated: dc/dT = c / 2T. Humidity changes the slope by a few per cent only.
	const slope = metresPerSecond / (2 * (temperatureCelsius - absoluteZeroCelsius));
	const sigma = slope * (isTemperatureKnown ? readTemperatureSigma : assumedTemperatureSigma);
	return {metresPerSecond, formula, sigma, temperatureCelsius, isTemperatureKnown};
}

/**
Speed of sound by ISO 9613-1, from temperature alone.

@param temperatureCelsius - °C, above absolute zero.
@returns Metres per second.
@see ISO 9613-1:1993, eq. A.5.
*/
export function isoSpeed(temperatureCelsius: number): number {
	return 343.2 * Math.sqrt((temperatureCelsius - absoluteZeroCelsius) / 293.15);
}

/**
Speed of sound in humid air at low frequencies.

@param temperatureCelsius - 0 to 30 °C.
@param humidityPercent - Relative humidity, 0 to 100 %.
@param pressurePascals - 75 000 to 102 000 Pa.
@returns Metres per second.
@see Cramer, Journal of the Acoustical Society of America 93(5), 1993, 2510-2516, eq. 15 and Table III; the same coefficients are IEC 61094-2:2009, Table F.2.
*/
export function cramerSpeed(
	temperatureCelsius: number,
	humidityPercent: number,
	pressurePascals: number = standardPressurePascals,
): number {
	const t = temperatureCelsius;
	const p = pressurePascals;
	const xc = carbonDioxideFraction;
	const xw = waterMoleFraction(t, humidityPercent, p);
	// Eq. 15 with the coefficients of Table III.
	return (
		331.5024 +
		0.603055 * t -
		0.000528 * t ** 2 +
		(51.471935 + 0.1495874 * t - 0.000782 * t ** 2) * xw +
		(-1.82e-7 + 3.73e-8 * t - 2.93e-10 * t ** 2) * p +
		(-85.20931 - 0.228525 * t + 5.91e-5 * t ** 2) * xc -
		2.835149 * xw ** 2 -
		2.15e-13 * p ** 2 +
		29.179762 * xc ** 2 +
		0.000486 * xw * p * xc
	);
}

/** Mole fraction of water vapour. @see Davis, Metrologia 29, 1992, 67-70: saturation pressure and enhancement factor. */
function waterMoleFraction(t: number, humidityPercent: number, p: number): number {
	const kelvin = t - absoluteZeroCelsius;
	const saturation = Math.exp(
		1.2378847e-5 * kelvin ** 2 - 1.9121316e-2 * kelvin + 33.93711047 - 6343.1645 / kelvin,
	);
	const enhancement = 1.00062 + 3.14e-8 * p + 5.6e-7 * t ** 2;
	return ((humidityPercent / 100) * enhancement * saturation) / p;
}

function formatted(value: number): string {
	return String(Number(value.toFixed(1))).replace('-', '−');
}
