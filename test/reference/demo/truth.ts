import type {ChannelId, Profile} from '../../../source/profile/types.ts';

/** A point in the room: to the right, to the back, up; metres from the front left corner of the floor. */
export type Point = readonly [x: number, y: number, z: number];

export type TrueSpeaker = {
	readonly at: Point;
	/** Level at 1 m for 2.83 V, dB. */
	readonly sensitivityDb: number;
	readonly lowLimitHertz: number;
	readonly watts: number;
};

export type TrueSub = {
	readonly at: Point;
	readonly output?: string;
	/** Level of its pink band at 1 m with every gain at 0 dB, dB. */
	readonly levelAtOneMetreDb: number;
};

/** An arrangement as it really is. What the tape and the meter say of it is drawn from this. */
export type Truth = {
	readonly widthMetres: number;
	readonly lengthMetres: number;
	/** Height of the ceiling at the left and at the right wall, metres. */
	readonly ceilingMetres: readonly [left: number, right: number];
	readonly speedOfSound: number;
	readonly screen: Point;
	readonly seats: Readonly<Record<string, Point>>;
	readonly speakers: Readonly<Partial<Record<ChannelId, TrueSpeaker>>>;
	readonly subs: Readonly<Record<string, TrueSub>>;
	readonly processorLatencyMs: number;
	readonly backgroundDb: number;
	readonly air: NonNullable<Profile['air']>;
};

const front = {sensitivityDb: 88, lowLimitHertz: 45, watts: 120} as const;
const surround = {sensitivityDb: 86, lowLimitHertz: 70, watts: 80} as const;
const overhead = {sensitivityDb: 85, lowLimitHertz: 80, watts: 60} as const;

/** Last year: the screen on the gable without the stairs, one sub, a smaller centre speaker. */
export const truth2025: Truth = {
	widthMetres: 4.203,
	lengthMetres: 5.612,
	ceilingMetres: [2.6, 1.9],
	// 331.45 m/s at 0 °C times the root of the absolute temperatures, and 0.4 m/s for the humidity.
	speedOfSound: 331.45 * Math.sqrt((273.15 + 19) / 273.15) + 0.4,
	screen: [2.1, 0.06, 1.12],
	seats: {middle: [2.1, 3.71, 1.06], left: [1.46, 3.74, 1.06], right: [2.75, 3.73, 1.06]},
	speakers: {
		FL: {...front, at: [0.72, 0.52, 0.96]},
		FR: {...front, at: [3.41, 0.44, 0.96]},
		FC: {sensitivityDb: 86.5, lowLimitHertz: 75, watts: 120, at: [2.06, 0.31, 0.55]},
		LS: {...surround, at: [0.31, 4.22, 1.35]},
		RS: {...surround, at: [3.9, 4.31, 1.32]},
		TpFL: {...overhead, at: [1.25, 2.31, 2.27]},
		TpFR: {...overhead, at: [2.95, 2.28, 1.99]},
		TpBL: {...overhead, at: [1.22, 4.92, 2.26]},
		TpBR: {...overhead, at: [2.98, 4.95, 1.98]},
	},
	subs: {sub1: {at: [3.83, 0.42, 0.24], levelAtOneMetreDb: 84}},
	processorLatencyMs: 0,
	backgroundDb: 41,
	air: {temperatureCelsius: 19, humidityPercent: 50},
};

/** This year: the screen on the other gable, a row nearer to it, a larger centre speaker, two subs behind a processor. */
export const truth2026: Truth = {
	...truth2025,
	ceilingMetres: [1.9, 2.6],
	speedOfSound: 331.45 * Math.sqrt((273.15 + 21.5) / 273.15) + 0.4,
	screen: [2.1, 0.05, 1.15],
	seats: {middle: [2.1, 3.3, 1.05], left: [1.45, 3.33, 1.05], right: [2.76, 3.32, 1.05]},
	speakers: {
		FL: {...front, at: [0.52, 0.45, 0.98]},
		FR: {...front, at: [3.6, 0.51, 0.98]},
		FC: {sensitivityDb: 89, lowLimitHertz: 55, watts: 120, at: [2.1, 0.3, 0.6]},
		LS: {...surround, at: [0.35, 3.95, 1.3]},
		RS: {...surround, at: [3.85, 4.06, 1.31]},
		TpFL: {...overhead, at: [1.2, 2, 2.02]},
		TpFR: {...overhead, at: [3, 2.02, 2.31]},
		TpBL: {...overhead, at: [1.21, 4.71, 2.02]},
		TpBR: {...overhead, at: [3.01, 4.65, 2.32]},
	},
	subs: {
		sub1: {at: [0.36, 0.41, 0.25], output: 'A', levelAtOneMetreDb: 84},
		sub2: {at: [3.81, 5.24, 0.25], output: 'B', levelAtOneMetreDb: 82.5},
	},
	processorLatencyMs: 5.2,
	backgroundDb: 39,
	air: {temperatureCelsius: 21.5, humidityPercent: 45},
};
