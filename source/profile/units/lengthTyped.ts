import {metresPerFoot} from './lengthFormat.ts';
import type {LengthUnit} from './lengthUnit.ts';
import type {Quantity} from './quantity.ts';

/** A length as typed, before anybody asked whether it can be meant. */
export type Typed = {readonly metres: number; readonly stepMetres: number; readonly typedAs: string};

export const metricNames: Readonly<Record<string, readonly [metres: number, name: string]>> = {
	m: [1, 'm'],
	metre: [1, 'm'],
	meter: [1, 'm'],
	cm: [0.01, 'cm'],
	centimetre: [0.01, 'cm'],
	centimeter: [0.01, 'cm'],
	mm: [0.001, 'mm'],
	millimetre: [0.001, 'mm'],
	millimeter: [0.001, 'mm'],
};

/** A typed number in its own words: `4 1/2` for 4.5 typed as a fraction, else its decimals. */
export function words({value, step, hasDecimals}: Quantity): string {
	if (hasDecimals || step === 1) return String(Number(value.toFixed(9)));
	const bottom = Math.round(1 / step);
	const whole = Math.floor(value + 1e-9);
	const top = Math.round((value - whole) * bottom);
	return [whole > 0 || top === 0 ? whole : '', top > 0 ? `${top}/${bottom}` : '']
		.filter(part => part !== '')
		.join(' ');
}

export function inUnit(quantity: Quantity, metresPerUnit: number, name: string): Typed {
	// Products and quotients of whole numbers keep 286 cm at 2.86 m, where a product with 0.01 leaves 2.8600000000000003.
	const metres = (quantity.value * Math.round(metresPerUnit * 10_000)) / 10_000;
	return {metres, stepMetres: quantity.step * metresPerUnit, typedAs: `${words(quantity)}${name}`};
}

export const bareUnits: Readonly<Record<LengthUnit, readonly [metres: number, name: string]>> = {
	'ft-in': [metresPerFoot, '′'],
	ft: [metresPerFoot, ' ft'],
	m: [1, ' m'],
	cm: [0.01, ' cm'],
};
