import {formatNumber} from '../../profile/units/decimalText.ts';

/** Degrees as people write them, with a true minus: to whole degrees, or to tenths. */
export function degreesText(degrees: number, digits = 0): string {
	return `${formatNumber(degrees, digits)}°`;
}
