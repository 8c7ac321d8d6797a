/** A level over frequency. Points in rising frequency, hertz > 0; a level that is not a number leaves a gap. */
export type ChartSeries = {
	readonly name: string;
	readonly points: ReadonlyArray<{readonly frequencyHz: number; readonly levelDb: number}>;
};

export type ChartOptions = {
	readonly series: readonly ChartSeries[];
	/** Cells and lines available. */
	readonly columns: number;
	readonly rows: number;
	readonly fromHz: number;
	readonly toHz: number;
	/** Level range in decibels; from the data where not given. */
	readonly fromDb?: number;
	readonly toDb?: number;
	/** Frequencies to mark, such as a crossover. */
	readonly marks?: ReadonlyArray<{readonly frequencyHz: number; readonly label: string}>;
};
