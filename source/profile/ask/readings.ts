import {usualMeterSigmaDb} from '../practice.ts';
import type {MeterReading, Profile, TapeReading} from '../types.ts';
import {subsOf} from './subs.ts';

/** All readings that the solver uses, grouped in one pass. Readings set aside are left out. */
export type Observations = {
	/** Tape readings between a seat and something else, by `tapeKey`. */
	readonly tape: ReadonlyMap<string, readonly TapeReading[]>;
	/** First-round level readings by `meterKey`: pink noise, or a signal that is not named. */
	readonly meter: ReadonlyMap<string, readonly MeterReading[]>;
};

export const tapeKey = (seat: string, end: string) => `${seat}\n${end}`;
export const meterKey = (seat: string, source: string) => `${seat}\n${source}`;

/** One name for a source, whatever the order in which several were listed. An LFE output stands for the subs it feeds. */
export function sourceNames(profile: Profile): (source: MeterReading['source']) => string {
	const fed = new Map<string, string[]>();
	for (const {id, fedBy} of subsOf(profile)) fed.set(fedBy, [...(fed.get(fedBy) ?? []), id]);
	const expanded = (id: string) => fed.get(id) ?? [id];
	return source => {
		if (typeof source === 'string' && !fed.has(source)) return source;
		return joinedName((typeof source === 'string' ? [source] : source).flatMap(expanded));
	};
}

/** The name of several sources together. */
export function joinedName(ids: readonly string[]): string {
	return ids.length === 1 ? ids[0]! : [...new Set(ids)].sort().join('+');
}

export function observe(profile: Profile): Observations {
	const seats = new Set(profile.seats.map(({id}) => id));
	const tape = new Map<string, TapeReading[]>();
	const meter = new Map<string, MeterReading[]>();
	const sourceName = sourceNames(profile);
	for (const reading of profile.tape ?? []) {
		if (reading.setAside) continue;
		if (seats.has(reading.to)) push(tape, tapeKey(reading.to, reading.from), reading);
		if (seats.has(reading.from)) push(tape, tapeKey(reading.from, reading.to), reading);
	}

	for (const reading of profile.meter ?? []) {
		if (isForLevels(reading)) push(meter, meterKey(reading.seat, sourceName(reading.source)), reading);
	}

	return {tape, meter};
}

/** Tones and readings with delay or polarity changed on purpose serve the blend; the second round serves the proof. */
export function isForLevels(reading: MeterReading): boolean {
	return (
		!reading.setAside &&
		reading.round === 'first' &&
		reading.addedDelayMs === undefined &&
		!reading.invertedSources?.length &&
		reading.signal?.kind !== 'tone'
	);
}

/** Standard deviation of one reading of the meter, dB: the kit's, else the usual. */
export function meterSigmaOf({kit}: Pick<Profile, 'kit'>): number {
	return kit?.meterSigmaDb ?? usualMeterSigmaDb;
}

function push<Value>(map: Map<string, Value[]>, key: string, value: Value): void {
	const list = map.get(key);
	if (list) list.push(value);
	else map.set(key, [value]);
}
