import {type No, numberText, readScaled, unknownUnit} from './scaled.ts';

export type FrequencyReading = {readonly kind: 'ok'; readonly hertz: number; readonly readAs: string} | No;

const hertzPer: Readonly<Record<string, number>> = {
	'': 1,
	hz: 1,
	hertz: 1,
	k: 1000,
	khz: 1000,
	kilohertz: 1000,
};
const largestHertz = 200_000;

/**
Reads a frequency: `80`, `80 Hz`, `0.08 kHz`. A bare number is in hertz.

@returns `ok` above 0 and up to 200 kHz, else a sentence. Never throws.
*/
export function readFrequency(text: string): FrequencyReading {
	const scaled = readScaled(text, '80 Hz');
	if ('kind' in scaled) return scaled;
	const factor = hertzPer[scaled.unit];
	if (factor === undefined) return unknownUnit(scaled.unit, '80 Hz');
	const hertz = Math.round(scaled.value * factor * 1e6) / 1e6;
	if (hertz <= 0) return {kind: 'no', why: 'A frequency is above 0 Hz.'};
	if (hertz > largestHertz)
		return {
			kind: 'no',
			why: `${numberText(hertz)} Hz is above all that is heard or measured here. Check the unit.`,
		};
	return {kind: 'ok', hertz, readAs: `${numberText(hertz)} Hz`};
}
