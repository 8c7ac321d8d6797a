import type {LengthUnit} from '../../profile/types.ts';
import {formatLength} from '../../profile/units/length.ts';
import type {Placement} from '../../study/placement/result.ts';
import {tableLines} from '../table.ts';
import {wrap} from '../wrap.ts';
import {degreesText} from './degreesText.ts';

/** The picture as each seat sees it, and what publications recommend. */
export function screenLines(
	{screen}: Placement,
	names: (id: string) => string,
	unit: LengthUnit,
	width: number,
): string[] {
	if (!screen) return [];
	const seats = screen.seats.map(
		({seat, horizontalDegrees, offNormalDegrees, distanceMetres, distanceInHeights, meets}) => [
			names(seat),
			degreesText(horizontalDegrees, 1),
			formatLength(distanceMetres, unit),
			distanceInHeights.toFixed(1),
			degreesText(offNormalDegrees),
			meets.at(-1) ? `${degreesText(meets.at(-1)!.degrees)} ${meets.at(-1)!.what}` : 'below 30°',
		],
	);
	const seatColumns = [
		{title: 'seat', importance: 9, leastCells: 10},
		{title: 'angle', align: 'right', importance: 8},
		{title: 'distance', align: 'right', importance: 6},
		{title: 'in heights', align: 'right', importance: 3},
		{title: 'off middle', align: 'right', importance: 2},
		{title: 'reaches', importance: 4, leastCells: 12},
	] as const;
	const sizes = screen.sizes.map(({degrees, what, source, distanceMetres, widthMetres}) => [
		degreesText(degrees, 1),
		formatLength(distanceMetres, unit),
		formatLength(widthMetres, unit),
		`${what} (${source})`,
	]);
	const sizeColumns = [
		{title: 'angle', align: 'right', importance: 9},
		{title: 'sit at', align: 'right', importance: 8},
		{title: 'or width', align: 'right', importance: 7},
		{title: 'recommended as', importance: 6, leastCells: 20},
	] as const;
	const {centre} = screen;
	const height = centre
		? wrap(
				`Front centre: ${formatLength(Math.abs(centre.aboveEarMetres), unit)} ${centre.aboveEarMetres < 0 ? 'below' : 'above'} the ear, ${centre.where} the picture; heard ${degreesText(Math.abs(centre.apartDegrees))} ${centre.apartDegrees < 0 ? 'below' : 'above'} the picture’s middle.`,
				width,
			)
		: [];
	return [
		`Picture ${formatLength(screen.widthMetres, unit)} by ${formatLength(screen.heightMetres, unit)}.`,
		...tableLines(seatColumns, seats, width),
		'',
		...tableLines(sizeColumns, sizes, width),
		...height,
	];
}
