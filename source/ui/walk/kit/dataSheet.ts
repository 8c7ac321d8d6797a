import {readFrequency} from '../../../profile/units/frequency.ts';
import {readNumber} from '../../../profile/units/number.ts';
import type {Reading} from '../prompt/taken.ts';

export type LimitReading = {
	readonly hertz: number;
	/** Drop at which the limit is stated, dB; 3 where the sheet tells none. */
	readonly dropDb?: 3 | 6 | 10;
	readonly readAs: string;
};

const drop = /\s*(?:at\s*|@\s*)?[-−–]\s*(3|6|10)\s*(?:db)?\s*$/i;

/** Reads the lower end of a range as data sheets print it: `45`, `45 Hz`, `45 -6dB`, `45 Hz at −10 dB`. */
export function readLimit(text: string): Reading<LimitReading> {
	const stated = drop.exec(text)?.[1];
	const reading = readFrequency(text.replace(drop, ''));
	if (reading.kind === 'no') return reading;
	if (stated === undefined) return reading;
	return {...reading, dropDb: Number(stated) as 3 | 6 | 10, readAs: limitText(reading.hertz, Number(stated))};
}

export function limitText(hertz: number, dropDb = 3): string {
	return `${hertz} Hz at −${dropDb} dB`;
}

export type SensitivityReading = {
	readonly value: number;
	readonly basis: '1 W' | '2.83 V';
	readonly readAs: string;
};

const basis = /\s+(?:at\s+|for\s+|@\s*)?(1\s*w|2[.,]83\s*v)(?:\s*\/?\s*1?\s*m)?\s*$/i;

/** Reads a sensitivity at one metre: `89`, `89 dB`, `89 1W`, `89 dB 2.83V/1m`. For 2.83 V where nothing is told. */
export function readSensitivity(text: string): Reading<SensitivityReading> {
	const stated = basis.exec(text)?.[1];
	const reading = readNumber(text.replace(basis, ''), {minimum: 60, maximum: 120, unit: 'dB'});
	if (reading.kind === 'no') return reading;
	const own = stated?.startsWith('1') ? '1 W' : '2.83 V';
	return {kind: 'ok', value: reading.value, basis: own, readAs: `${reading.readAs} for ${own}`};
}
