import {conductorText} from './conductor.ts';
import {type Ask, type No, readScaled} from './scaled.ts';

export type ConductorChoice = {
	readonly conductor: {readonly awg: number} | {readonly areaSquareMillimetres: number};
	readonly readAs: string;
};
export type ConductorReading = (ConductorChoice & {readonly kind: 'ok'}) | Ask<ConductorChoice> | No;

const example = '16 AWG or 2.5 mm²';
const thickestSquareMillimetres = 500;

/**
Reads a conductor as printed on the reel: `16 AWG`, `2.5 mm²`, or a bare number. A bare whole number of 8 and above is a
gauge, one with a fraction a cross-section; whole numbers below are asked about, since both are sold.

@returns `ok` for gauges 0 to 40 and areas up to 500 mm². Never throws.
*/
export function readConductor(text: string): ConductorReading {
	const scaled = readScaled(text.replace(/^\s*#/, ''), example);
	if ('kind' in scaled) return scaled;
	const {value, unit} = scaled;
	const gauge = value >= 0 && value <= 40 && Number.isInteger(value) ? choiceOf({awg: value}) : undefined;
	const area =
		value > 0 && value <= thickestSquareMillimetres ? choiceOf({areaSquareMillimetres: value}) : undefined;
	if (unit === 'awg' || unit === 'ga' || unit === 'gauge')
		return gauge ? {kind: 'ok', ...gauge} : {kind: 'no', why: 'A gauge is a whole number from 0 to 40.'};
	if (/^(?:mm2|mm²|mm\^2|sqmm|mmq)$/.test(unit)) {
		return area
			? {kind: 'ok', ...area}
			: {kind: 'no', why: `A cross-section is above 0 and up to ${thickestSquareMillimetres} mm².`};
	}

	if (unit !== '') return {kind: 'no', why: `“${unit}” is no unit of a conductor. Type it like ${example}.`};
	if (gauge && value >= 8) return {kind: 'ok', ...gauge};
	if (gauge && area) return {kind: 'ask', question: 'Cross-section or gauge?', choices: [area, gauge]};
	const only = area ?? gauge;
	return only ? {kind: 'ok', ...only} : {kind: 'no', why: `That is no conductor. Type it like ${example}.`};
}

function choiceOf(conductor: ConductorChoice['conductor']): ConductorChoice {
	return {conductor, readAs: conductorText(conductor)};
}
