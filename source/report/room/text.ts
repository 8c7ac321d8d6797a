import type {Profile} from '../../profile/types.ts';
import {formatNumber} from '../../profile/units/decimalText.ts';
import {formatLength} from '../../profile/units/length.ts';
import type {RoomInputs, RoomStudy, SeatMode} from '../../study/room/roomStudy.ts';
import type {SeatRow} from '../../study/room/seatRow.ts';
import {drawChart} from '../chart.ts';
import {chartText} from '../chartText.ts';
import {remarkLines} from '../remarks.ts';
import {type Say, sayIn} from '../said/say.ts';
import {tableLines} from '../table.ts';
import {wrap} from '../wrap.ts';
import {rowMapLines} from './rowMap.ts';

export type RoomTextOptions = {
	readonly width: number;
	/** Charts as words, for a screen reader. */
	readonly isInWords: boolean;
	/** Every mode and reflection instead of those that matter most. */
	readonly isFull: boolean;
};

const chartRows = 14;
const shownModes = 14;
const shownReflections = 3;

const sources: Readonly<Record<RoomStudy['decay']['from'], string>> = {
	recorded: 'recorded',
	stated: 'as stated',
	estimated: 'estimated from the surfaces',
};

/** What is computed about a room as text: figures, bass at the seats, standing waves, reflections, findings. */
export function roomStudyText(
	profile: Profile,
	inputs: RoomInputs,
	study: RoomStudy,
	row: SeatRow,
	options: RoomTextOptions,
): string {
	const {width} = options;
	const say = sayIn(profile, profile.lengthUnit);
	const {volumeCubicMetres, decay, schroederHertz} = study;
	return [
		...wrap(`${profile.name}, ${profile.date}: the room, computed`, width),
		...(volumeCubicMetres > 0
			? wrap(
					`${formatNumber(volumeCubicMetres, 1)} m³; sound dies away in ${formatNumber(decay.seconds, 2)} s (${sources[decay.from]}); below ${formatNumber(schroederHertz, 0)} Hz single standing waves are heard.`,
					width,
				)
			: []),
		...togetherLines(study, inputs, say, options),
		...(options.isInWords || row.placesMetres.length === 0
			? []
			: [
					'',
					'Along the seat row, all subs together',
					...rowMapLines(row, inputs.seats[0]!.at[0], inputs.shape.widthMetres),
				]),
		...modeLines(study, inputs, say, options),
		...reflectionLines(study, profile, say, options),
		...(volumeCubicMetres > 0
			? [
					'',
					...wrap(
						'How far to trust it: sizes wrong by 1.5 % shift frequencies as much; walls that give, doors and furniture shift them by 2 to 4 %. Where a peak or hole falls is better known than how deep it is.',
						width,
					),
				]
			: []),
		...remarkLines(study.findings, width, say),
	].join('\n');
}

function togetherLines(
	{together, frequenciesHertz}: RoomStudy,
	{seats}: RoomInputs,
	say: Say,
	{width, isInWords}: RoomTextOptions,
): string[] {
	if (!together) return [];
	const chart = {
		series: together.seatsDb.map((levels, s) => ({
			name: say.name(seats[s]!.id),
			points: levels.map((levelDb, f) => ({frequencyHz: frequenciesHertz[f]!, levelDb})),
		})),
		columns: Math.min(width, 100),
		rows: chartRows,
		fromHz: 15,
		toHz: 200,
	};
	const {spreadDb, flatnessDb, hole} = together.figures;
	return [
		'',
		...wrap(
			'All subs together, arriving together at the reference seat (dB against one sub in the open at 1 m)',
			width,
		),
		...(isInWords ? chartText(chart).flatMap(line => wrap(line, width)) : drawChart(chart)),
		...wrap(
			`20 to 120 Hz: seats differ by ${formatNumber(spreadDb, 1)} dB; ${say.name(seats[0]!.id)} is even within ${formatNumber(flatnessDb, 1)} dB, its deepest hole ${formatNumber(hole.depthDb, 0)} dB at ${formatNumber(hole.frequencyHertz, 0)} Hz.`,
			width,
		),
	];
}

function modeLines(
	{modes}: RoomStudy,
	{seats}: RoomInputs,
	say: Say,
	{width, isFull}: RoomTextOptions,
): string[] {
	if (modes.length === 0) return [];
	const shown = isFull ? modes : modes.slice(0, shownModes);
	return [
		'',
		'Standing waves, and how loud each seat hears them against their loudest place',
		...tableLines(
			[
				{title: 'frequency', align: 'right', importance: 5},
				{title: 'between', importance: 4},
				...seats.map(({id}, s) => ({
					title: say.name(id),
					align: 'right' as const,
					importance: s === 0 ? 3 : 2,
					leastCells: 8,
				})),
			],
			shown.map(mode => [
				`${formatNumber(mode.frequencyHertz, 1)} Hz`,
				betweenText(mode),
				...mode.seatsDb.map(level => (level < -30 ? 'nothing' : `${formatNumber(level, 0)} dB`)),
			]),
			width,
		),
		...(shown.length < modes.length ? [`${modes.length - shown.length} more up to 200 Hz: --full.`] : []),
	];
}

/** What a standing wave runs between, with its number of half waves there. */
function betweenText({order, kind}: SeatMode): string {
	const axes = ['side to side', 'front to back', 'floor to ceiling'];
	const parts = order.flatMap((count, axis) => (count ? [`${count} × ${axes[axis]}`] : []));
	if (kind !== undefined) return parts.join(', ');
	return ['in the cross-section', ...parts].join(', ');
}

function reflectionLines(
	{reflections}: RoomStudy,
	profile: Profile,
	say: Say,
	{width, isFull}: RoomTextOptions,
): string[] {
	const unit = profile.lengthUnit ?? 'm';
	const rows = reflections.flatMap(({speaker, reflections: all}) =>
		(isFull ? all : all.slice(0, shownReflections)).map((reflection, i) => {
			const [x, y, z] = reflection.at;
			const length = (metres: number) =>
				formatLength(metres, unit, {stepMetres: unit.startsWith('ft') ? 0.0254 : 0.01});
			const isSide = /left|right|inner-x/.test(reflection.plane);
			const isEnd = /front|back|inner-y/.test(reflection.plane);
			const place = isSide
				? `${length(y)} from the screen wall, ${length(z)} high`
				: isEnd
					? `${length(x)} from the left wall, ${length(z)} high`
					: `${length(x)} from the left wall, ${length(y)} from the screen wall`;
			return [
				i === 0 ? say.name(speaker) : '',
				say.name(reflection.plane),
				place,
				`${formatNumber(reflection.delayMs, 1)} ms`,
				`${formatNumber(reflection.levelDb, 1)} dB`,
			];
		}),
	);
	if (rows.length === 0) return [];
	return [
		'',
		'First reflections to the reference seat: where an absorber would hang',
		...tableLines(
			[
				{title: 'speaker', importance: 5, leastCells: 10},
				{title: 'surface', importance: 4, leastCells: 8},
				{title: 'where', importance: 4, leastCells: 18},
				{title: 'later', align: 'right', importance: 3},
				{title: 'level', align: 'right', importance: 2},
			],
			rows,
			width,
		),
		...wrap(
			'Level by distance alone; what the surface takes off comes on top. High places: a second person at the ladder, fixings as the maker and local codes ask.',
			width,
		),
	];
}
