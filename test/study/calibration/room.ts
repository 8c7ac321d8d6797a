import type {MeterReading, Profile, TapeReading} from '../../../source/profile/types.ts';

/** A small invented room: one seat, a receiver with 0.1 ms and 0.5 dB steps, no readings. */
export function emptyRoom(changes: Partial<Profile> = {}): Profile {
	return {
		format: 1,
		name: 'Invented room',
		date: '2026-04-18',
		lengthUnit: 'm',
		room: {name: 'Invented room'},
		air: {temperatureCelsius: 20},
		seats: [{id: 'middle', name: 'sofa middle', reference: true}],
		channels: [{id: 'FL'}, {id: 'FR'}],
		receiver: {
			timing: {kind: 'delay', stepMs: 0.1, minimumMs: 0, maximumMs: 20},
			trim: {stepDb: 0.5, minimumDb: -12, maximumDb: 12},
			crossover: {choicesHertz: [60, 80, 100], scope: 'per channel'},
			subOutputs: 1,
		},
		tape: [],
		meter: [],
		...changes,
	};
}

export function tape(from: string, metres: number, rest: Partial<TapeReading> = {}): TapeReading {
	return {from, to: 'middle', metres, ...rest};
}

/** An unweighted reading in the first round, so that no correction enters unless a test asks for it. */
export function level(
	source: MeterReading['source'],
	decibels: number,
	rest: Partial<MeterReading> = {},
): MeterReading {
	return {source, seat: 'middle', decibels, weighting: 'Z', round: 'first', ...rest};
}
