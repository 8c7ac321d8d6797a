import type {Extreme} from '../diff/profileDiff.ts';

/** What one profile says of one channel or sub, at the reference seat. */
export type ChannelFigures = {
	readonly name: string;
	readonly isSub: boolean;
	/** Mean of the tape readings to the reference seat. */
	readonly distanceMetres?: number;
	/** First-round level without the meter's weighting, dB. */
	readonly levelDb?: number;
	/** The same with trim, gain and master volume in force taken out, dB. */
	readonly ownDb?: number;
	/** Standard uncertainty of both, dB. */
	readonly sigmaDb?: number;
	/** As dialled in, dB. */
	readonly trimDb?: number;
	/** Of its newest recording: deepest dip below 300 Hz against the mean there, and decay in the octave at 500 Hz. */
	readonly dip?: Extreme;
	readonly decaySeconds?: number;
	/** Speaker data as stated; another text means another speaker. */
	readonly speaker: string;
};

/** What one profile adds to the history of its room. */
export type HistoryEntry = {
	/** Name of the file, without its ending. */
	readonly id: string;
	readonly name: string;
	/** ISO date. */
	readonly date: string;
	readonly room: string;
	readonly channels: ReadonlyMap<string, ChannelFigures>;
};

export type HistoryPoint = {
	readonly date: string;
	readonly distanceMetres?: number;
	readonly levelDb?: number;
	readonly trimDb?: number;
	readonly dip?: Extreme;
	readonly decaySeconds?: number;
	/** Own level against that of the first profile and against the other channels, distance taken into account, dB. */
	readonly driftDb?: number;
	readonly sigmaDb?: number;
};

/** One channel through the years. */
export type ChannelHistory = {
	readonly id: string;
	readonly name: string;
	/** One for each profile, oldest first. */
	readonly points: readonly HistoryPoint[];
	/** Change of the own level from first to last that nothing in the profiles explains. */
	readonly drift?: {
		readonly fromDate: string;
		readonly toDate: string;
		/** Between the two dates. */
		readonly years: number;
		readonly value: number;
		readonly sigma: number;
		/** More than 1 dB and more than three standard uncertainties. */
		readonly isReal: boolean;
	};
};

export type RoomHistory = {
	readonly room: string;
	/** Oldest first. */
	readonly profiles: ReadonlyArray<Pick<HistoryEntry, 'id' | 'name' | 'date'>>;
	readonly channels: readonly ChannelHistory[];
};
