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
	/** The receiver's output that feeds it; LFE1 where not given. */
	readonly fedBy?: 'LFE1' | 'LFE2';
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
