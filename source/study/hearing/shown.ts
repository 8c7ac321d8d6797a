import type {HeardLine, HeardPlaying} from './heardPlaying.ts';
import type {PlayingRow, SeatRound} from './playingRow.ts';

/** What tables tell of a line: its figures, without impulse and complex responses. */
export type ShownLine = Omit<HeardLine, 'impulse' | 'direct' | 'response'>;

export type ShownPlaying = Omit<HeardPlaying, 'lines' | 'impulses'> & {readonly lines: readonly ShownLine[]};

export type ShownRow = Omit<PlayingRow, 'playing'> & {readonly playing: ShownPlaying};

export type ShownRound = Pick<SeatRound, 'seat' | 'groups'> & {
	readonly base: ShownRow;
	/** Whether mains and subs were told apart. */
	readonly isApart: boolean;
	readonly apartBy?: SeatRound['apartBy'];
};

/** A row without what only further computing needs: small enough to be handed from one thread to another. */
export function shownRow({playing: {impulses: _, lines, ...playing}, ...row}: PlayingRow): ShownRow {
	const shown = lines.map(({impulse: _, direct: __, response: ___, ...line}): ShownLine => line);
	return {...row, playing: {...playing, lines: shown}};
}

export function shownRound({seat, groups, base, apart, apartBy}: SeatRound): ShownRound {
	return {seat, groups, base: shownRow(base), isApart: apart !== undefined, ...(apartBy && {apartBy})};
}
