import type {LengthUnit} from '../../profile/types.ts';
import {formatLength} from '../../profile/units/length.ts';
import {cellWidth, fitCells} from '../fitCells.ts';
import {type PlanScene, referencePoint, separation} from './scene.ts';

/** Distances from the reference seat, in as many columns as fit; lines of at most `columns` cells. */
export function planLegend(scene: PlanScene, lengthUnit: LengthUnit, columns: number): string[] {
	const seat = referencePoint(scene);
	if (!seat) return [];
	const others = scene.points.filter(({kind}) => kind === 'speaker' || kind === 'sub');
	const values = others.map(
		point => [point.label, formatLength(separation(point, seat), lengthUnit)] as const,
	);
	if (values.length === 0) return [];
	const labelCells = Math.max(...values.map(([label]) => cellWidth(label)));
	const valueCells = Math.max(...values.map(([, value]) => cellWidth(value)));
	const entryCells = labelCells + 1 + valueCells;
	const perLine = Math.max(1, Math.floor((columns + 3) / (entryCells + 3)));
	const entries = values.map(
		([label, value]) => `${fitCells(label, labelCells)} ${fitCells(value, valueCells, 'right')}`,
	);
	const lines = [`From ${seat.name ?? seat.label}:`];
	for (let at = 0; at < entries.length; at += perLine)
		lines.push(entries.slice(at, at + perLine).join('   '));
	return lines.map(line => (cellWidth(line) > columns ? fitCells(line, columns) : line));
}
