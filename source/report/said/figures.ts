import {formatNumber, formatSigned} from '../../profile/units/decimalText.ts';

/** `74.2 dB`, true minus sign. */
export function db(value: number, decimals = 1): string {
	return `${formatNumber(value, decimals)} dB`;
}

/** `+0.5 dB`, `−0.5 dB`, `0.0 dB`. */
export function signedDb(value: number, decimals = 1): string {
	return `${formatSigned(value, decimals)} dB`;
}

/** `3.2 ms`. */
export function ms(value: number, decimals = 1): string {
	return `${formatNumber(value, decimals)} ms`;
}
