/** Resistivity of annealed copper at 20 °C, ohm metres. @see IEC 60028:1925, 1/58 ohm mm² per metre. */
const copperOhmMetres = 1.7241e-8;

/** Share of a speaker's rated impedance that the cable's loop may have; common practice, published with Russell's table. */
export const loopShare = 0.05;

/** Conductors sold for speakers: the even gauge numbers, and the metric cross-sections of IEC 60228. */
export const soldGauges = [22, 20, 18, 16, 14, 12, 10] as const;
export const soldAreasSquareMillimetres = [0.5, 0.75, 1, 1.5, 2.5, 4, 6] as const;

export type Conductor = {readonly awg: number} | {readonly areaSquareMillimetres: number};

/**
Diameter of a solid round conductor of a gauge number.

@param awg - Gauge number, 0 to 40.
@returns Millimetres.
@throws {RangeError} If the number is not an integer from 0 to 40.
@see ASTM B258: d = 0.127 mm · 92^((36 − n) / 39).
*/
export function gaugeDiameterMillimetres(awg: number): number {
	if (!Number.isInteger(awg) || awg < 0 || awg > 40) {
		throw new RangeError(`awg must be a whole number from 0 to 40, got ${awg}`);
	}

	return 0.127 * 92 ** ((36 - awg) / 39);
}

/** Cross-section of a conductor, square millimetres. @throws {RangeError} For a gauge number out of range or an area that is not positive. */
export function crossSectionSquareMillimetres(conductor: Conductor): number {
	if ('awg' in conductor) return (Math.PI / 4) * gaugeDiameterMillimetres(conductor.awg) ** 2;
	const area = conductor.areaSquareMillimetres;
	if (!(area > 0 && Number.isFinite(area))) {
		throw new RangeError(`areaSquareMillimetres must be finite and > 0, got ${area}`);
	}

	return area;
}

/** Resistance of one conductor at 20 °C, ohms per kilometre. @see ASTM B258 for the gauge numbers' areas. */
export function resistanceOhmsPerKilometre(conductor: Conductor): number {
	return (copperOhmMetres / crossSectionSquareMillimetres(conductor)) * 1e9;
}

/**
Resistance of both conductors of a cable, there and back.

@param lengthMetres - Length of the cable, 0 or more.
@returns Ohms.
*/
export function loopResistanceOhms(conductor: Conductor, lengthMetres: number): number {
	return (2 * lengthMetres * resistanceOhmsPerKilometre(conductor)) / 1000;
}

/**
Longest cable whose loop resistance stays within a share of the speaker's rated impedance.

@param impedanceOhms - Rated impedance, > 0.
@param share - Allowed share, 0.05 unless told otherwise.
@returns Metres.
@see Russell, Speaker Wire: A History, for the rule of 5 % and its table of lengths.
*/
export function longestRunMetres(conductor: Conductor, impedanceOhms: number, share = loopShare): number {
	return (share * impedanceOhms * 1000) / (2 * resistanceOhmsPerKilometre(conductor));
}

/**
Thinnest conductor on sale that keeps the loop within a share of the rated impedance.

@param lengthMetres - Length of the cable.
@param impedanceOhms - Rated impedance, > 0.
@param system - Gauge numbers or metric cross-sections.
@returns The conductor, or undefined where even the thickest is too thin.
*/
export function thinnestConductor(
	lengthMetres: number,
	impedanceOhms: number,
	system: 'awg' | 'metric',
	share = loopShare,
): Conductor | undefined {
	const sold: Conductor[] =
		system === 'awg'
			? soldGauges.map(awg => ({awg}))
			: soldAreasSquareMillimetres.map(areaSquareMillimetres => ({areaSquareMillimetres}));
	return sold.find(conductor => longestRunMetres(conductor, impedanceOhms, share) >= lengthMetres);
}

/**
Level lost in the cable between amplifier and speaker, for the rated impedance as a pure resistance.

@returns Decibels, 0 or more.
*/
export function cableLossDb(conductor: Conductor, lengthMetres: number, impedanceOhms: number): number {
	return 20 * Math.log10(1 + loopResistanceOhms(conductor, lengthMetres) / impedanceOhms);
}
