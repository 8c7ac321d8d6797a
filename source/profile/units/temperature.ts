import {type Ask, type No, numberText, readScaled, unknownUnit} from './scaled.ts';

export type TemperatureChoice = {readonly celsius: number; readonly readAs: string};
export type TemperatureReading = (TemperatureChoice & {readonly kind: 'ok'}) | Ask<TemperatureChoice> | No;

/** Range in which the formulas for the speed of sound are used. */
const smallestCelsius = -20;
const largestCelsius = 50;

const units: Readonly<Record<string, 'C' | 'F'>> = {c: 'C', celsius: 'C', f: 'F', fahrenheit: 'F'};

function fromFahrenheit(fahrenheit: number): number {
	return Math.round(((fahrenheit - 32) / 1.8) * 1000) / 1000;
}

/**
Reads an air temperature: `20`, `20.5 °C`, `68 F`.

@param bareUnit - Unit of a bare number.
@returns `ok` from −20 to 50 °C; a question where a bare number only fits the other unit; else a sentence. Never throws.
*/
export function readTemperature(text: string, bareUnit: 'C' | 'F' = 'C'): TemperatureReading {
	const scaled = readScaled(text, '20 °C or 68 °F');
	if ('kind' in scaled) return scaled;
	const name = scaled.unit.replace(/^(?:°|º|deg(?:rees?)?\.?)/, '');
	const unit = name === '' ? bareUnit : units[name];
	if (!unit) return unknownUnit(scaled.unit, '20 °C or 68 °F');
	const choice = (as: 'C' | 'F'): TemperatureChoice => {
		const celsius = as === 'C' ? scaled.value : fromFahrenheit(scaled.value);
		const shown = `${numberText(celsius, 1)} °C`;
		return {celsius, readAs: as === 'C' ? shown : `${numberText(scaled.value, 1)} °F = ${shown}`};
	};

	const isUsual = ({celsius}: TemperatureChoice) => celsius >= smallestCelsius && celsius <= largestCelsius;
	const typed = choice(unit);
	if (isUsual(typed)) return {kind: 'ok', ...typed};
	const other = choice(unit === 'C' ? 'F' : 'C');
	if (name === '' && isUsual(other)) {
		return {
			kind: 'ask',
			question: `${typed.readAs} is no room to sit in. Was ${other.readAs} meant?`,
			choices: [other],
		};
	}

	return {
		kind: 'no',
		why: `${typed.readAs} is outside −20 to 50 °C, where the tool can compute. Check the thermometer and the unit.`,
	};
}
