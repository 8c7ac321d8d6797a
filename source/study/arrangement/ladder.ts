import {type Comparison, compareBass} from './judged.ts';
import type {ArrangementRow} from './row.ts';
import type {FoundArrangement} from './search.ts';
import type {SearchSpace} from './searchSpace.ts';
import {seatsMoved} from './seatsMoved.ts';

/** A gain smaller than this over the row above shows as the same figure, dB: half a tenth. */
const leastGainDb = 0.05;

/**
The ladder: arrangements from the fewest things lifted up. What lifts more without a smaller mean is left out, since the
rung below does as much; means so fall from rung to rung whatever was found.

@param now - The room as it stands.
@param found - Judged in the same draws as `now`, the fewest things lifted first.
*/
export function ladderRows(
	{seats}: Pick<SearchSpace, 'seats'>,
	now: FoundArrangement,
	found: readonly FoundArrangement[],
): ArrangementRow[] {
	const rows: ArrangementRow[] = [];
	for (const arrangement of found) {
		const above = rows.at(-1);
		const {meanDb} = (above?.arrangement ?? now).judged;
		if (meanDb - arrangement.judged.meanDb < leastGainDb) continue;
		const {lifted, rowShiftMetres, subs, judged} = arrangement;
		rows.push({
			name: {kind: 'rung', lifted, rowShiftMetres},
			arrangement,
			places: {subs, seats: seatsMoved(seats, rowShiftMetres)},
			against: compareBass(now.judged, judged, seats.length),
			...(above && {againstAbove: compareBass(above.arrangement.judged, judged, seats.length)}),
		});
	}

	return rows;
}

/** Whether a comparison says for sure that something is better. */
export const isSurelyBetter = ({certainty, gainDb}: Comparison): boolean =>
	certainty === 'sure' && gainDb > 0;

/**
The rung with the fewest things to lift beyond which nothing better is sure, as its place in the rows; undefined where
the room as it stands is as good as it gets for sure.
*/
export function advisedRow(
	now: FoundArrangement,
	rows: readonly ArrangementRow[],
	seats: number,
): number | undefined {
	let advised: number | undefined;
	for (const [i, {name, arrangement}] of rows.entries()) {
		if (name.kind !== 'rung') continue;
		const below = advised === undefined ? now : rows[advised]!.arrangement;
		if (isSurelyBetter(compareBass(below.judged, arrangement.judged, seats))) advised = i;
	}

	return advised;
}
