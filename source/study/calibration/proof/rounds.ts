import {type BoxState, boxState} from '../../../profile/ask/boxState.ts';
import {meterSigmaOf} from '../../../profile/ask/readings.ts';
import {recordedReadings} from '../../../profile/ask/recordedReadings.ts';
import {settingsInForce, standingSettings} from '../../../profile/ask/settings.ts';
import {subsOf} from '../../../profile/ask/subs.ts';
import {isLfe} from '../../../profile/channels.ts';
import {usualMainsBand, usualSubBand} from '../../../profile/practice.ts';
import type {MeterReading, Profile, Signal} from '../../../profile/types.ts';
import {energyMean} from '../../../science/acoustics/decibels.ts';
import {asPlayed} from './asPlayed.ts';

/** Readings of one thing under one set of settings. */
export type Taken = {
	/** Speakers and subs that sounded, in alphabetical order; an LFE channel stands for its subs. */
	readonly atoms: readonly string[];
	readonly seat: string;
	readonly weighting: 'A' | 'C' | 'Z';
	readonly signal: Signal;
	/** Settings as they stood for it, with what was changed on purpose. */
	readonly state: BoxState;
	/** Energy mean, dB, as read. */
	readonly levelDb: number;
	readonly sigmaDb: number;
	readonly count: number;
	/** Each reading by itself, in the order of the profile's list. */
	readonly looks: ReadonlyArray<{readonly order: number; readonly levelDb: number}>;
};

/** Speakers and subs behind what a reading names. */
export function atomsOf(profile: Profile, source: MeterReading['source']): string[] {
	const named = typeof source === 'string' ? [source] : source;
	const subs = subsOf(profile);
	const atoms = named.flatMap(id =>
		isLfe(id) ? subs.filter(({fedBy}) => fedBy === id).map(sub => sub.id) : [id],
	);
	return [...new Set(atoms)].sort();
}

export function isSub(profile: Profile, atom: string): boolean {
	return subsOf(profile).some(({id}) => id === atom);
}

/** The signal of a reading, or the usual one for what sounded. */
function signalOf(profile: Profile, reading: MeterReading, atoms: readonly string[]): Signal {
	return reading.signal ?? (atoms.every(atom => isSub(profile, atom)) ? usualSubBand : usualMainsBand);
}

export function signalText(signal: Signal): string {
	return signal.kind === 'tone' ? `tone ${signal.hertz}` : `pink ${signal.fromHertz}-${signal.toHertz}`;
}

export function readingKey(atoms: readonly string[], seat: string, signal: Signal): string {
	return [seat, atoms.join('+'), signalText(signal)].join(' · ');
}

/**
All readings of a round that count, repeats under the same conditions averaged on energy.

Readings of the second round that do not say which settings stood count as taken under the decided set.
*/
export function roundOf(profile: Profile, round: 'first' | 'proof'): Taken[] {
	const fallback = round === 'proof' ? standingSettings(profile) : undefined;
	const states = new Map<unknown, BoxState>();
	const stateOf = (reading: MeterReading) => {
		const set = settingsInForce(profile, reading) ?? fallback;
		const known = states.get(set) ?? boxState(profile, set);
		states.set(set, known);
		return known;
	};
	const numbers = new Map<BoxState, number>();
	const numberOf = (state: BoxState) => {
		const number = numbers.get(state) ?? numbers.size;
		numbers.set(state, number);
		return number;
	};

	const groups = new Map<
		string,
		{
			readonly looks: Array<{order: number; levelDb: number}>;
			readonly first: Omit<Taken, 'levelDb' | 'sigmaDb' | 'count' | 'looks'>;
		}
	>();
	const recorded = round === 'first' ? recordedReadings(profile) : [];
	for (const [order, reading] of [...(profile.meter ?? []), ...recorded].entries()) {
		if (reading.setAside || reading.round !== round || reading.source === 'background') continue;
		const atoms = atomsOf(profile, reading.source);
		const signal = signalOf(profile, reading, atoms);
		const state = stateOf(reading);
		const {weighting, addedDelayMs = 0, addedDelaySources = [], invertedSources = []} = reading;
		const changed = `${addedDelayMs} ${addedDelaySources.join('+')} ${invertedSources.join('+')}`;
		const conditions = `${weighting} ${changed} ${numberOf(state)}`;
		const key = `${readingKey(atoms, reading.seat, signal)} ${conditions}`;
		const group = groups.get(key) ?? {
			looks: [],
			first: {atoms, seat: reading.seat, weighting, signal, state: asPlayed(profile, state, reading, atoms)},
		};
		group.looks.push({order, levelDb: reading.decibels});
		groups.set(key, group);
	}

	const sigma = meterSigmaOf(profile);
	return [...groups.values()].map(({looks, first}) => ({
		...first,
		levelDb: energyMean(looks.map(({levelDb}) => levelDb)),
		sigmaDb: sigma / Math.sqrt(looks.length),
		count: looks.length,
		looks,
	}));
}
