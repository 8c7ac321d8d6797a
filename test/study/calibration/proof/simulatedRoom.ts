import type {ChannelId, MeterReading, Profile} from '../../../../source/profile/types.ts';
import {judgedRound} from '../../../../source/study/calibration/proof/judgedRound.ts';

/** Seeded uniform numbers, 0 ≤ u < 1. @see Steele and Vigna, splitmix-like mixing; known as mulberry32, public domain. */
export function uniform(seed: number): () => number {
	let state = seed >>> 0;
	return () => {
		state = (state + 0x6d2b79f5) >>> 0;
		let t = state;
		t = Math.imul(t ^ (t >>> 15), t | 1);
		t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
		return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
	};
}

/** Standard normal numbers by Box and Muller (1958). */
export function normal(random: () => number): () => number {
	return () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}

export const mains = [
	'FL',
	'FR',
	'FC',
	'LS',
	'RS',
	'BL',
	'BR',
	'TpFL',
	'TpFR',
] as const satisfies readonly ChannelId[];
export const subs = ['sub1', 'sub2'] as const;

/** Entries that a person typed in: trims of the receiver and gains of the two processor outputs, dB. */
export type Entries = Readonly<Record<string, number>>;

export type SimulatedRoom = {
	readonly former: Entries;
	readonly intended: Entries;
	readonly ownDb: Readonly<Record<string, number>>;
	readonly noiseDb: number;
	/** Readings of each in the first round; the second is read as it is asked. */
	readonly repeats: number;
};

const half = (value: number) => Math.round(value * 2) / 2;

/** A room of nine speakers and two subs with trims found and trims decided, levels and noise all drawn at random. */
export function drawRoom(random: () => number, repeats: number): SimulatedRoom {
	const draw = (low: number, high: number) => low + (high - low) * random();
	const ids = [...mains, 'out1', 'out2'];
	const ownDb = Object.fromEntries([...mains, ...subs].map(id => [id, draw(69.5, 80.5)]));
	const idOf = (id: string) => (id === 'out1' ? 'sub1' : id === 'out2' ? 'sub2' : id);
	return {
		ownDb,
		noiseDb: draw(0.2, 0.5),
		repeats,
		former: {LFE1: 0, ...Object.fromEntries(ids.map(id => [id, half(draw(-4, 4))]))},
		intended: {LFE1: 0, ...Object.fromEntries(ids.map(id => [id, half(75 - ownDb[idOf(id)]!)]))},
	};
}

function settings(entries: Entries) {
	const channel = (id: string) => ({trimDb: {stepped: entries[id]!}});
	return {
		channels: Object.fromEntries([...mains, 'LFE1'].map(id => [id, channel(id)])),
		outputs: {out1: {gainDb: {stepped: entries.out1!}}, out2: {gainDb: {stepped: entries.out2!}}},
		masterVolumeDb: -20,
	};
}

/** What is heard: own level plus the entries in its line. */
function heardDb({ownDb}: SimulatedRoom, entries: Entries, id: string): number {
	if (id === 'sub1') return ownDb[id]! + entries.LFE1! + entries.out1!;
	if (id === 'sub2') return ownDb[id]! + entries.LFE1! + entries.out2!;
	return ownDb[id]! + entries[id]!;
}

/**
A profile with both rounds: the first under the former entries, the second under what was really typed in, each row again
as long as that is asked.

@param typed - Entries that really stand in the boxes in the second round.
@param masterDb - How far the master volume was moved, dB.
*/
export function simulate(
	room: SimulatedRoom,
	typed: Entries,
	masterDb: number,
	noise: () => number,
): Profile {
	const read = (round: 'first' | 'proof', source: string): MeterReading => ({
		source,
		seat: 'sofa',
		decibels:
			heardDb(room, round === 'first' ? room.former : typed, source) +
			(round === 'first' ? 0 : masterDb) +
			room.noiseDb * noise(),
		weighting: 'Z' as const,
		round,
		inForce: round === 'first' ? 'before' : 'now',
	});
	const sources = [...mains, ...subs];
	const first = sources.flatMap(source => Array.from({length: room.repeats}, () => read('first', source)));
	let profile = profileOf(room, [...first, ...sources.map(source => read('proof', source))]);
	for (let look = 1; look < mostLooks; look++) {
		const again = judgedRound(profile).readings.filter(({verdict}) => verdict === 'again');
		if (again.length === 0) break;
		profile = {
			...profile,
			meter: [...profile.meter!, ...again.map(({source}) => read('proof', source[0]!))],
		};
	}

	return profile;
}

/** More are never asked for, whatever is read. */
const mostLooks = 8;

function profileOf(room: SimulatedRoom, meter: readonly MeterReading[]): Profile {
	return {
		format: 1,
		name: 'Simulated',
		date: '2026-04-18',
		room: {name: 'Simulated room'},
		seats: [{id: 'sofa', name: 'Sofa', reference: true}],
		channels: [...mains, 'LFE1' as const].map(id => ({id})),
		subs: subs.map((id, index) => ({
			id,
			name: `Sub ${index + 1}`,
			fedBy: 'LFE1',
			processorOutput: `out${index + 1}`,
		})),
		receiver: {
			timing: {kind: 'delay', stepMs: 0.1, minimumMs: 0, maximumMs: 30},
			trim: {stepDb: 0.5, minimumDb: -12, maximumDb: 12},
			crossover: {choicesHertz: [60, 80, 100], scope: 'per channel'},
			subOutputs: 1,
		},
		bassProcessor: {
			latencyMs: 1,
			outputs: ['out1', 'out2'],
			delay: {stepMs: 0.1, minimumMs: 0, maximumMs: 30},
			gain: {stepDb: 0.5, minimumDb: -12, maximumDb: 12},
		},
		meter: [...meter],
		settings: [
			{id: 'before', origin: 'found', ...settings(room.former)},
			{id: 'now', origin: 'entered', ...settings(room.intended)},
		],
	};
}
