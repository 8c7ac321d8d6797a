import type {Kit, LengthUnit} from '../../profile/types.ts';
import {metresPerFoot, metresPerInch} from '../../profile/units/length.ts';

export type Swapped = {readonly metres: number; readonly text: string};

const units: ReadonlySet<unknown> = new Set<LengthUnit>(['ft-in', 'ft', 'm', 'cm']);

/** The unit in which the tape is marked: as the kit says, else feet and inches where its step is a part of an inch. */
export function tapeShownIn(kit: Kit | undefined): LengthUnit {
	const said = kit?.tapeShownIn;
	if (units.has(said)) return said as LengthUnit;
	const parts = kit?.tapeStepMetres === undefined ? 0.5 : metresPerInch / kit.tapeStepMetres;
	return Math.abs(parts - Math.round(parts)) < 1e-3 ? 'ft-in' : 'm';
}

/** Every text that comes from swapping two neighbouring, different digits (a decimal point between them is passed over). */
function swaps(text: string): string[] {
	const places = [...text].flatMap((character, index) => (/\d/.test(character) ? [index] : []));
	return places.slice(1).flatMap((right, index) => {
		const left = places[index]!;
		if (text[left] === text[right]) return [];
		const characters = [...text];
		[characters[left], characters[right]] = [characters[right]!, characters[left]!];
		return [characters.join('')];
	});
}

/**
What a length could have been if two neighbouring digits were swapped when it was written down.

The digits are those that the tape shows: 2.85 m, 285 cm or 9.35 ft; feet and inches also swap feet with
inches (9′ 4″ for 4′ 9″).
*/
export function swappedDigits(metres: number, unit: LengthUnit): Swapped[] {
	if (unit === 'ft-in') {
		const inches = metres / metresPerInch;
		const feet = Math.floor((inches + 1e-9) / 12);
		const rest = inches - feet * 12;
		const found: Swapped[] = [];
		const offer = (newFeet: number, newInches: number) => {
			if (newInches < 12 && (newFeet !== feet || Math.abs(newInches - rest) > 1e-6)) {
				const shown = Math.round(newInches * 100) / 100;
				found.push({metres: (newFeet * 12 + newInches) * metresPerInch, text: `${newFeet}′ ${shown}″`});
			}
		};
		const whole = Math.floor(rest + 1e-9);
		offer(whole, feet + (rest - whole));
		for (const text of swaps(String(feet))) offer(Number(text), rest);
		if (whole >= 10) for (const text of swaps(String(whole))) offer(feet, Number(text) + (rest - whole));
		return found;
	}

	const {factor, digits, suffix} = {
		ft: {factor: metresPerFoot, digits: 2, suffix: ' ft'},
		m: {factor: 1, digits: 3, suffix: ' m'},
		cm: {factor: 0.01, digits: 1, suffix: ' cm'},
	}[unit];
	// The last digit was hardly typed where it is nought.
	const typed = (metres / factor).toFixed(digits).replace(/(\.\d*?)0$/, '$1');
	return swaps(typed).map(text => ({
		metres: Number(text) * factor,
		text: `${text.replace(/(\.\d*?)0+$/, '$1').replace(/\.$/, '')}${suffix}`,
	}));
}
