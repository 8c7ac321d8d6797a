import type {LengthUnit} from '../../profile/types.ts';
import {formatLength} from '../../profile/units/length.ts';
import type {Placement} from '../../study/placement/result.ts';
import {tableLines} from '../table.ts';
import {degreesText} from './degreesText.ts';

const verdicts = {nominal: 'nominal', allowed: 'in range', outside: 'outside by', flagged: 'off by'} as const;

/** Angles and distances at the reference seat with what the layout asks for, and the same of the other seats in short. */
export function angleRows(
	placement: Placement,
	names: (id: string) => string,
	unit: LengthUnit,
	width: number,
): string[] {
	const rows = placement.sightlines
		.filter(({seat, id}) => seat === placement.seat && id !== 'screen')
		.map(({id, azimuthDegrees, elevationDegrees, distanceMetres}) => {
			const judged = placement.judgements.find(one => one.id === id);
			const parts = [judged?.azimuth, judged?.elevation].filter(part => part !== undefined);
			const limits = parts
				.map(({rangeDegrees, nominalDegrees}) =>
					rangeDegrees
						? `${degreesText(rangeDegrees[0])} to ${degreesText(rangeDegrees[1])}`
						: degreesText(nominalDegrees),
				)
				.join(', ');
			const worst = Math.max(0, ...parts.map(({excessDegrees}) => excessDegrees));
			const verdict = judged
				? `${verdicts[judged.verdict]}${worst > 0 ? ` ${degreesText(worst + (judged.verdict === 'flagged' ? 5 : 0), 1)}` : ''}`
				: '';
			return [
				names(id),
				degreesText(azimuthDegrees.value, 1),
				degreesText(elevationDegrees.value, 1),
				`±${Math.max(0.1, azimuthDegrees.sigma).toFixed(1)}°`,
				formatLength(distanceMetres.value, unit),
				limits,
				verdict,
			];
		});
	return tableLines(
		[
			{title: 'channel', importance: 9, leastCells: 12},
			{title: 'azimuth', align: 'right', importance: 8},
			{title: 'elevation', align: 'right', importance: 7},
			{title: '± azimuth', align: 'right', importance: 2},
			{title: 'distance', align: 'right', importance: 5},
			{title: 'asked for', importance: 4},
			{title: 'verdict', importance: 6},
		],
		rows,
		width,
	).concat(otherSeats(placement, names, unit, width));
}

function otherSeats(
	placement: Placement,
	names: (id: string) => string,
	unit: LengthUnit,
	width: number,
): string[] {
	const seats = [...new Set(placement.sightlines.map(({seat}) => seat))].filter(
		seat => seat !== placement.seat,
	);
	return seats.flatMap(seat => {
		const rows = placement.sightlines
			.filter(line => line.seat === seat && line.id !== 'screen')
			.map(({id, azimuthDegrees, elevationDegrees, distanceMetres}) => [
				names(id),
				degreesText(azimuthDegrees.value, 1),
				degreesText(elevationDegrees.value, 1),
				formatLength(distanceMetres.value, unit),
			]);
		const columns = [
			{title: 'channel', importance: 9, leastCells: 12},
			{title: 'azimuth', align: 'right', importance: 8},
			{title: 'elevation', align: 'right', importance: 7},
			{title: 'distance', align: 'right', importance: 5},
		] as const;
		return ['', `Angles at ${names(seat)}`, ...tableLines(columns, rows, width)];
	});
}
