/** How far hearing has come: what is being done, how much of it is done, and of how much. */
export type HearingProgress = {
	readonly step: 'finding' | 'cutting' | 'judging';
	readonly done: number;
	readonly of: number;
};
