import {formatNumber, formatSigned} from '../../profile/units/decimalText.ts';
import {formatLength} from '../../profile/units/length.ts';
import {ladderRowName} from '../../report/arrangement/rowName.ts';
import {fitCells} from '../../report/fitCells.ts';
import {sayIn} from '../../report/said/say.ts';
import {tableLines} from '../../report/table.ts';
import {wrap} from '../../report/wrap.ts';
import type {Comparison} from '../../study/arrangement/judged.ts';
import {nearestSpot} from '../../study/arrangement/spots.ts';
import type {Line} from '../parts/lines.tsx';
import {type Planning, type PlanRow, rowMoves} from './planning.ts';
import {measuresOf, planRows} from './rows.ts';

/** Rows of the ladder shown at once. */
const mostRows = 7;

export function addsText(against: Comparison | undefined): string {
	if (!against) return '';
	if (against.certainty === 'none') return 'no difference';
	const gain = `${formatSigned(against.gainDb, 1)} dB`;
	return against.certainty === 'sure' ? `${gain}, sure` : `${gain}, not sure`;
}

export function rowName(planning: Planning, row: PlanRow): string {
	const {profile, space} = planning;
	const unit = profile.lengthUnit ?? 'm';
	const moves = rowMoves(planning, row);
	const spots =
		row.name.kind === 'oneMore'
			? [nearestSpot(row.name.at, space.room.shape)]
			: moves.map(({to}) => nearestSpot(to, space.room.shape));
	return ladderRowName({name: row.name, moves, spots}, sayIn(profile, unit), unit);
}

/** The ladder as lines, the chosen row marked; a window that follows the cursor. */
export function ladderLines(planning: Planning, columns: number): Line[] {
	const rows = planRows(planning);
	const {moving, space} = planning;
	const cursor = Math.min(planning.cursor, rows.length - 1);
	const cells = rows.map(row => {
		const measures = measuresOf(planning, row.places);
		const {judged} = row.arrangement;
		const isWall = row.name.kind === 'wall';
		return [
			rowName(planning, row),
			`${formatNumber(judged.meanDb, 1)} dB`,
			`−${formatNumber(judged.middle.hole.depthDb, 0)} dB ${formatNumber(judged.middle.hole.frequencyHertz, 0)} Hz`,
			isWall ? '' : `${formatNumber(measures.outsideDegrees, 0)}°`,
			isWall || measures.viewingDegrees === undefined ? '' : `${formatNumber(measures.viewingDegrees, 0)}°`,
			isWall ? '' : formatLength(measures.cableMetres, planning.profile.lengthUnit ?? 'm', {stepMetres: 0.1}),
			addsText(row.against),
		];
	});
	const lines = tableLines(
		[
			{title: 'ready to lift', importance: 6, leastCells: 22},
			{title: space.seats.length > 1 ? 'seats differ' : 'uneven by', align: 'right', importance: 5},
			{title: 'deepest hole', align: 'right', importance: 3},
			{title: 'off', align: 'right', importance: 2},
			{title: 'view', align: 'right', importance: 1},
			{title: 'cable', align: 'right', importance: 0},
			{title: 'adds', importance: 4},
		],
		cells,
		columns - 3,
	);
	const [head = '', ...body] = lines;
	// What a narrow window leaves out is said in a last line.
	const told = body.splice(rows.length);
	const from = Math.min(Math.max(0, cursor - mostRows + 2), Math.max(0, rows.length - mostRows));
	const shown = body.slice(from, from + mostRows);
	const hidden = body.length - shown.length;
	return [
		{text: `   ${head}`, style: 'quiet'},
		...shown.map(
			(text, i): Line =>
				from + i === cursor && !moving ? {text: ` › ${text}`, style: 'value'} : {text: `   ${text}`},
		),
		...told.slice(0, 1).map((text): Line => ({text: `   ${text}`, style: 'quiet'})),
		...(hidden > 0 ? [{text: `   ${hidden} more rows`, style: 'quiet' as const}] : []),
	];
}

/** The head: the room, how far a search is, and what was assumed, on one line each. */
export function headLines(planning: Planning, columns: number): Line[] {
	const {profile, space, search} = planning;
	const unit = profile.lengthUnit ?? 'm';
	const {shape} = space.room;
	const length = (metres: number) => formatLength(metres, unit, {stepMetres: 0.01});
	const heights =
		shape.kind === 'ceiling'
			? `ceiling ${length(shape.places[0]!.heightMetres)} to ${length(shape.places.at(-1)!.heightMetres)}`
			: `ceiling ${length(shape.heightMetres)}`;
	const step = search?.step;
	const what = {places: 'places', oneMore: 'one more sub', walls: 'other walls'};
	const progress = search
		? `   searching ${step ? `${what[step.what]} ${Math.floor((100 * step.done) / step.of)} %` : '…'}, s stops`
		: profile.planned
			? '   a plan is kept'
			: '';
	const {decay} = space.room;
	const assumed = [
		...space.findings.flatMap(({code, facts}) =>
			code === 'arrange-assumed' && 'what' in facts ? [`${facts.what.join(' and ')} where usual`] : [],
		),
		`ears ${length(space.seats[0]!.at[2])} up`,
		decay.from === 'estimated' ? 'decay 0.25 to 0.65 s' : `decay ${formatNumber(decay.seconds, 2)} s`,
		planning.profile.screen?.widthMetres === undefined ? 'picture not known' : '',
	].filter(Boolean);
	return [
		{
			text: ` ${profile.name}`,
			style: 'strong',
			after: `   ${length(shape.widthMetres)} wide, ${length(shape.lengthMetres)} long, ${heights}${progress}`,
		},
		...wrap(`Assumed: ${assumed.join(', ')}. r corrects any of it.`, columns, '  ')
			.slice(0, 1)
			.map((text): Line => ({text, style: 'quiet'})),
	];
}

/** Two columns of lines beside each other. */
export function besideEach(left: readonly string[], right: readonly string[], leftCells: number): Line[] {
	return Array.from({length: Math.max(left.length, right.length)}, (_, i) => ({
		text: `${fitCells(left[i] ?? '', leftCells)}  ${right[i] ?? ''}`,
	}));
}
