import {type PlanMeasures, planMeasures} from '../../study/arrangement/measures.ts';
import type {ThingMove} from '../../study/arrangement/moves.ts';
import {rowMoves} from '../../study/arrangement/row.ts';
import {withSpeakerMoves} from '../../study/arrangement/speakerMoves.ts';
import type {Planning, PlanRow} from './planning.ts';

/** What an arrangement of the plan measures beside its bass. */
export function measuresOf(planning: Planning, places: PlanRow['places']): PlanMeasures {
	const {profile, space, speakers} = planning;
	return planMeasures(profile, space.room.shape, speakers, places);
}

/** What is carried for a row. */
export function movesIn({profile, space, speakers}: Planning, row: PlanRow): readonly ThingMove[] {
	const ear = row.places.seats[0]!;
	return withSpeakerMoves(rowMoves(space, row), profile, space.room.shape, speakers, ear);
}

/** The rows as they are shown: as it stands first, then what was kept, then what was found, by the order asked for. */
export function shownRows(planning: Planning): readonly PlanRow[] {
	const {now, kept, found, order} = planning;
	if (order === 'lift') return [now, ...kept, ...found];
	const value = (row: PlanRow): number => {
		const {outsideDegrees, cableMetres} = measuresOf(planning, row.places);
		return order === 'angles' ? outsideDegrees : cableMetres;
	};
	return [now, ...[...kept, ...found].toSorted((a, b) => value(a) - value(b))];
}

/** The row that the cursor stands on. */
export function rowAtCursor(planning: Planning): PlanRow {
	const rows = shownRows(planning);
	return rows[Math.min(planning.cursor, rows.length - 1)]!;
}
