import type {LengthUnit} from '../../profile/types.ts';
import {formatNumber, formatSigned} from '../../profile/units/decimalText.ts';
import {formatLength} from '../../profile/units/length.ts';
import type {PlanMeasures} from '../../study/arrangement/measures.ts';
import type {ArrangementRow} from '../../study/arrangement/row.ts';

/** Titles of what a row of the ladder says beside its name. */
export const ladderTitles = (seats: number) =>
	[seats > 1 ? 'seats differ' : 'uneven by', 'deepest hole', 'off', 'view', 'cable', 'adds'] as const;

/** What a row adds to the room as it stands; where the draws cannot tell it from the row above (↑), that. */
export function addsText({against, againstAbove}: Pick<ArrangementRow, 'against' | 'againstAbove'>): string {
	if (!against) return '';
	if (against.certainty === 'none') return 'no difference';
	const gain = `${formatSigned(against.gainDb, 1)} dB`;
	if (against.certainty !== 'sure') return `${gain}, not sure`;
	return againstAbove && againstAbove.certainty !== 'sure' ? 'cannot tell from ↑' : `${gain}, sure`;
}

/** The same as a sentence, for the row that is asked about. */
export function addsSentence(row: Pick<ArrangementRow, 'against' | 'againstAbove'>): string {
	const {against, againstAbove} = row;
	if (!against) return '';
	const gain = `${formatSigned(against.gainDb, 1)} dB`;
	const now =
		against.certainty === 'none'
			? 'No difference from as it stands can be told.'
			: `Adds ${gain} to the room as it stands, ${against.certainty === 'sure' ? 'sure' : 'not sure'}.`;
	if (!againstAbove) return now;
	const more = `${formatSigned(againstAbove.gainDb, 1)} dB`;
	return againstAbove.certainty === 'sure'
		? `${now} ${more} of it over the row above, sure.`
		: `${now} Cannot tell from the row above (${more}).`;
}

/** The cells of a row under `ladderTitles`; angles, view and cable only where they hold in this room. */
export function ladderCells(row: ArrangementRow, measures: PlanMeasures, unit: LengthUnit): string[] {
	const {meanDb, middle} = row.arrangement.judged;
	const isWall = row.name.kind === 'wall';
	const {outsideDegrees, viewingDegrees, cableMetres} = measures;
	return [
		`${formatNumber(meanDb, 1)} dB`,
		`−${formatNumber(middle.hole.depthDb, 0)} dB ${formatNumber(middle.hole.frequencyHertz, 0)} Hz`,
		isWall ? '' : `${formatNumber(outsideDegrees, 0)}°`,
		isWall || viewingDegrees === undefined ? '' : `${formatNumber(viewingDegrees, 0)}°`,
		isWall ? '' : formatLength(cableMetres, unit, {stepMetres: 0.1}),
		addsText(row),
	];
}
