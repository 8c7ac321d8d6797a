import type {LengthUnit} from '../../profile/types.ts';
import {formatLength} from '../../profile/units/length.ts';
import type {Dot} from '../../study/placement/aiming.ts';
import type {Placement} from '../../study/placement/result.ts';
import {tableLines} from '../table.ts';
import {wrap} from '../wrap.ts';
import {degreesText} from './degreesText.ts';

const surfaces = {
	'wall:left': 'left wall',
	'wall:right': 'right wall',
	'wall:front': 'screen wall',
	'wall:back': 'back wall',
	floor: 'floor',
	ceiling: 'ceiling',
} as const;

/** Where the dot falls, such as "back wall, 2.95 m from the left wall, 0.98 m high". */
export function dotText({surface, distances}: Dot, unit: LengthUnit): string {
	const places = distances.map(({from, metres}) =>
		from === 'floor'
			? `${formatLength(metres, unit)} high`
			: `${formatLength(metres, unit)} from ${surfaces[from]}`,
	);
	return [surfaces[surface], ...places].join(', ');
}

function turnText(degrees: number, towards: string): string {
	const turn = degreesText(degrees);
	return turn === degreesText(0) ? 'straight' : `${turn} to the ${towards.replace(' wall', '')}`;
}

/** How to turn and tilt each speaker, and where the laser dot falls beyond the headrest. */
export function aimRows(
	{aims}: Placement,
	names: (id: string) => string,
	unit: LengthUnit,
	width: number,
): string[] {
	if (aims.length === 0) return [];
	const rows = aims.map(({id, toeDegrees, towards, tiltDegrees, dot}) => [
		names(id),
		turnText(toeDegrees, surfaces[towards]),
		`${degreesText(Math.abs(tiltDegrees))} ${tiltDegrees < 0 ? 'down' : 'up'}`,
		dot ? dotText(dot, unit) : '',
	]);
	const plumbs = aims.flatMap(({id, plumb}) =>
		plumb
			? [
					`${names(id)}, firing straight down: spot on the ${dotText(plumb, unit)}; the ear is ${degreesText(plumb.offAxisDegrees)} off its axis.`,
				]
			: [],
	);
	const columns = [
		{title: 'speaker', importance: 5, leastCells: 12},
		{title: 'turn', importance: 3},
		{title: 'tilt', importance: 3},
		{title: 'laser dot, past the ear', importance: 4, leastCells: 24},
	] as const;
	return [
		...wrap(
			'Turn: from facing straight out of its wall. Lay the laser on the speaker’s axis. Nobody in the seat; never point it at eyes.',
			width,
		),
		...tableLines(columns, rows, width),
		...plumbs.flatMap(text => wrap(text, width)),
	];
}
