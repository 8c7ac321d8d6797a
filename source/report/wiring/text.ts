import {conductorText} from '../../profile/units/conductor.ts';
import {formatNumber} from '../../profile/units/decimalText.ts';
import type {Cable, WiringResult} from '../../study/wiring/result.ts';
import {remarkLines} from '../remarks.ts';
import {saidStep} from '../said/connecting.ts';
import type {Say} from '../said/say.ts';
import {tableLines} from '../table.ts';
import {wrap} from '../wrap.ts';

/** The wiring of a profile as text: cables, what to buy, outlets, the order to connect in, every remark. */
export function wiringText(result: WiringResult, say: Say, width: number): string {
	return `${[
		...cableLines(result.cables, say, width),
		...totalLines(result, say, width),
		...outletLines(result, width),
		'',
		'Order of connecting',
		...result.order
			.map(saidStep)
			.flatMap(({text, cables, caution}, index) => [
				...wrap(cables.length > 0 ? `${text} (${cables.join(', ')})` : text, width, `${index + 1}. `),
				...(caution ? wrap(`Caution: ${caution}`, width, '   ') : []),
			]),
		...remarkLines(result.remarks, width, say),
	].join('\n')}\n`;
}

function cableLines(cables: readonly Cable[], say: Say, width: number): string[] {
	const columns = [
		{title: 'cable', importance: 10},
		{title: 'from', importance: 9},
		{title: 'to', importance: 9},
		{title: 'kind', importance: 2},
		{title: 'cut to', align: 'right' as const, importance: 8},
		{title: 'conductor', importance: 7},
		{title: 'loss dB', align: 'right' as const, importance: 1},
		{title: 'state', importance: 5},
		{title: 'route', importance: 3, leastCells: 10},
	];
	const rows = cables.map(cable => [
		cable.id,
		cable.from,
		cable.to,
		cable.kind,
		cutText(cable, say),
		cable.conductor
			? conductorText(cable.conductor)
			: cable.needs
				? `needs ${conductorText(cable.needs)}`
				: '',
		cable.lossDb === undefined ? '' : formatNumber(cable.lossDb, 2),
		cable.origin === 'proposed' ? 'proposed' : cable.done ? 'laid' : 'to lay',
		cable.route ?? '',
	]);
	return ['Cables', ...tableLines(columns, rows, width)];
}

function cutText({cutMetres, run}: Cable, say: Say): string {
	if (cutMetres === undefined) return '';
	return `${run?.from === 'estimated' ? '≈ ' : ''}${say.length(cutMetres)}`;
}

function totalLines({totals}: WiringResult, say: Say, width: number): string[] {
	if (totals.length === 0) return [];
	const columns = [
		{title: 'to buy', importance: 10},
		{title: 'cables', align: 'right' as const, importance: 5},
		{title: 'length', align: 'right' as const, importance: 9},
		{title: 'remark', importance: 3},
	];
	const rows = totals.map(({what, cables, metres, unknown}) => [
		what,
		String(cables),
		metres > 0 ? say.length(metres) : '',
		unknown > 0 ? `${unknown} of unknown length not in the sum` : '',
	]);
	return ['', 'To buy, slack included', ...tableLines(columns, rows, width)];
}

function outletLines({outlets}: WiringResult, width: number): string[] {
	if (outlets.length === 0) return [];
	const columns = [
		{title: 'outlet', importance: 10},
		{title: 'load', align: 'right' as const, importance: 9},
		{title: 'used', align: 'right' as const, importance: 8},
		{title: 'of', importance: 7},
		{title: 'loads', importance: 3, leastCells: 10},
	];
	const rows = outlets.map(({name, watts, share, limit, loads}) => [
		name,
		`${Math.round(watts)} W`,
		share === undefined ? '' : `${Math.round(share * 100)} %`,
		limit ?? '',
		loads.map(load => load.name).join(', '),
	]);
	return ['', 'Outlets', ...tableLines(columns, rows, width)];
}
