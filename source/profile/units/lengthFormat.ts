import type {LengthUnit} from './lengthUnit.ts';

/** International inch and foot, exact. @see International yard and pound agreement of 1959; ISO 80000-3. */
export const metresPerInch = 0.0254;
export const metresPerFoot = 0.3048;

/** Smallest division shown by {@link formatLength} where nothing else is asked for, metres. */
export function shownStepMetres(unit: LengthUnit): number {
	return {'ft-in': metresPerInch / 4, ft: metresPerFoot / 100, m: 0.01, cm: 0.001}[unit];
}

function feetAndInches(metres: number, stepMetres: number): string {
	const stepInches = stepMetres / metresPerInch;
	let parts = 1;
	while (parts < 64 && 1 / parts > stepInches * 1.0001) parts *= 2;
	const count = Math.round((metres / metresPerInch) * parts);
	const feet = Math.floor(count / (12 * parts));
	const inches = Math.floor(count / parts) % 12;
	let top = count % parts;
	let bottom = parts;
	while (top > 0 && top % 2 === 0) {
		top /= 2;
		bottom /= 2;
	}

	const fraction = top > 0 ? `${top}/${bottom}` : '';
	const inchText = fraction ? (inches > 0 ? `${inches} ${fraction}` : fraction) : String(inches);
	return feet > 0 ? `${feet}′ ${inchText}″` : `${inchText}″`;
}

/**
A length as people write it, in the profile's display unit.

@param metres - Finite; negative values (differences) get a minus sign. Anything else gives a dash.
@param stepMetres - Division to show; a quarter inch, 0.01 ft, 1 cm (in metres) or 1 mm (in centimetres) where not given.
@returns Such as `9′ 4 1/2″`, `9.38 ft`, `2.86 m` or `285.8 cm`.
*/
export function formatLength(
	metres: number,
	unit: LengthUnit,
	{stepMetres}: {readonly stepMetres?: number} = {},
): string {
	if (!Number.isFinite(metres)) return '–';
	const step = stepMetres !== undefined && stepMetres > 0 ? stepMetres : shownStepMetres(unit);
	const size = Math.abs(metres);
	const text = {
		'ft-in': () => feetAndInches(size, step),
		ft: () => `${(size / metresPerFoot).toFixed(step < 0.0009 ? 3 : 2)} ft`,
		m: () => `${size.toFixed(step < 0.0099 ? 3 : 2)} m`,
		cm: () => `${(size * 100).toFixed(step < 0.0099 ? 1 : 0)} cm`,
	}[unit]();
	return metres < 0 && /[1-9]/.test(text) ? `−${text}` : text;
}
