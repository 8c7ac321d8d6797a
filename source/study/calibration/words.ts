import type {LengthUnit} from '../../profile/types.ts';
import {formatLength} from '../../profile/units/length.ts';
import type {Remark} from './result.ts';

/** A number as sentences show it: fixed decimals, true minus sign, no "−0.0". */
export function number(value: number, decimals = 1): string {
	const text = Math.abs(value).toFixed(decimals);
	return value < 0 && Number(text) !== 0 ? `−${text}` : text;
}

/** `74.2 dB`; dB throughout. */
export function inDb(value: number, decimals = 1): string {
	return `${number(value, decimals)} dB`;
}

/** `+0.5 dB`, `−0.5 dB`, `0.0 dB`. */
export function inSignedDb(value: number, decimals = 1): string {
	const text = inDb(value, decimals);
	return value > 0 && Number.parseFloat(text) !== 0 ? `+${text}` : text;
}

/** `3.2 ms`. */
export function inMs(value: number, decimals = 1): string {
	return `${number(value, decimals)} ms`;
}

/** A length in the profile's own unit; metres where the profile names none. */
export function inLength(metres: number, unit: LengthUnit | undefined): string {
	return formatLength(metres, unit ?? 'm');
}

export function remark(kind: Remark['kind'], code: string, text: string, about?: string): Remark {
	return about === undefined ? {kind, code, text} : {kind, code, about, text};
}
