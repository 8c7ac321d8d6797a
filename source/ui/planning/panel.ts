import {formatNumber} from '../../profile/units/decimalText.ts';
import {formatLength} from '../../profile/units/length.ts';
import {addsSentence} from '../../report/arrangement/ladderCells.ts';
import {moveLines} from '../../report/arrangement/moveLines.ts';
import {placeInTapeTerms} from '../../report/arrangement/placeText.ts';
import {planPicture} from '../../report/arrangement/planPicture.ts';
import {seatBars} from '../../report/arrangement/seatBars.ts';
import {drawChart} from '../../report/chart.ts';
import type {ChartSeries} from '../../report/chartData.ts';
import {chartText} from '../../report/chartText.ts';
import {planText} from '../../report/plan.ts';
import {remarkLines} from '../../report/remarks.ts';
import {type Say, sayIn} from '../../report/said/say.ts';
import {wrap} from '../../report/wrap.ts';
import type {ThingMove} from '../../study/arrangement/moves.ts';
import type {LiveArrangement} from '../../study/arrangement/planBench.ts';
import {rowMoves} from '../../study/arrangement/row.ts';
import type {Vector} from '../../study/survey/vectors.ts';
import type {ScreenLine} from '../parts/lines.tsx';
import {scrolled} from '../parts/scrolled.ts';
import {besideEach, rowName} from './lines.ts';
import {inHand} from './moving.ts';
import type {Planning} from './planning.ts';
import {roomWordsHelp} from './roomWords.ts';
import {movesIn, rowAtCursor} from './rows.ts';
import {planScene, subLetter} from './scene.ts';

export type PanelSize = {
	readonly columns: number;
	readonly rows: number;
	readonly isScreenReader: boolean;
};

const help = [
	'Rows are arrangements, the least to lift first; each says how much the seats differ in the bass, the deepest hole at the reference seat, how far speakers are off their angles, the view, cable to the subs, and what it adds to the room as it stands.',
	's searches, s again stops with the best so far. m takes a thing by its name or number, arrows move it, Enter keeps it as a row.',
	'n marks the place of the chosen row “not here”, for good, with a reason. r types the room: sizes, ceiling, doors, what stays.',
	'v shows the curve at the reference seat, l the list of moves, p writes it, w says why, o orders by angles or cable. Enter chooses: saved as planned, then staked out with the tape.',
];

/** What fills the lower part: the plan with the seats' bass beside it, the curve, the list of moves, the reasons or the help. */
export function panelLines(planning: Planning, size: PanelSize): ScreenLine[] {
	const {view, from, profile} = planning;
	const say = sayIn(profile, profile.lengthUnit ?? 'm');
	const text = (lines: readonly string[]): ScreenLine[] => lines.map(one => ({text: one === '' ? ' ' : one}));
	const wrapped = (paragraphs: readonly string[]) => paragraphs.flatMap(one => wrap(one, size.columns, '  '));
	switch (view) {
		case 'curve':
			return text(bassCurve(planning, size));
		case 'moves':
			return scrolled(text(moveTexts(planning, size.columns)), from, size.rows);
		case 'why':
			return scrolled(text(whyTexts(planning, say, size.columns)), from, size.rows);
		case 'help':
			return scrolled(text(wrapped([...help, `r takes: ${roomWordsHelp}.`])), from, size.rows);
		default:
			return planPanel(planning, size, say);
	}
}

/** What is in hand, else the chosen row. */
function shownOf(planning: Planning): {
	readonly places: {subs: readonly Vector[]; seats: readonly Vector[]};
	readonly live: LiveArrangement;
} {
	return planning.moving ?? rowAtCursor(planning);
}

function planPanel(planning: Planning, size: PanelSize, say: Say): ScreenLine[] {
	const {profile, space} = planning;
	const unit = profile.lengthUnit ?? 'm';
	const {places, live} = shownOf(planning);
	const scene = planScene(planning, places);
	const left = Math.min(34, Math.max(20, Math.floor(size.columns * 0.42)));
	const right = size.columns - left - 3;
	const seats = live.seatsDb.map((levelsDb, i) => ({name: say.name(space.seats[i]!.id), levelsDb}));
	const words = [
		...seatBars(planning.bench.frequenciesHertz, seats, right),
		'',
		...placeWords(planning, right),
	];
	if (size.isScreenReader)
		return [...planText(scene, unit), ...curveWords(planning)].map(one => ({text: one}));
	if (size.columns < 60) return words.slice(0, size.rows).map(one => ({text: ` ${one}`}));
	const picture = planPicture(scene, left, size.rows).map(line => ` ${line}`);
	return besideEach(picture, words.slice(0, size.rows), left + 1);
}

/** The thing in hand, or what the chosen row moves, in tape terms. */
function placeWords(planning: Planning, columns: number): string[] {
	const {moving, profile, space, now} = planning;
	const unit = profile.lengthUnit ?? 'm';
	const {shape} = space.room;
	if (moving) {
		const index = space.subs.findIndex(({id}) => id === moving.id);
		const seat = Math.max(
			0,
			space.seats.findIndex(({id}) => id === moving.id),
		);
		const at = index >= 0 ? moving.places.subs[index]! : moving.places.seats[seat]!;
		const {judged} = moving.live;
		const gain = now.arrangement.judged.meanDb - judged.meanDb;
		return [
			...wrap(`${inHand(planning, moving)}: ${placeInTapeTerms(at, shape, unit)}`, columns),
			`step ${formatLength(moving.stepMetres, unit, {stepMetres: 0.01})}`,
			`${space.seats.length > 1 ? 'seats differ' : 'uneven by'} ${formatNumber(judged.meanDb, 1)} dB, ${gain >= 0 ? 'less' : 'more'} by ${formatNumber(Math.abs(gain), 1)}`,
			`deepest hole −${formatNumber(judged.middle.hole.depthDb, 0)} dB at ${formatNumber(judged.middle.hole.frequencyHertz, 0)} Hz`,
		];
	}

	const row = rowAtCursor(planning);
	const say = sayIn(profile, unit);
	if (row.name.kind === 'oneMore')
		return wrap(
			`One more: ${placeInTapeTerms(row.name.at, shape, unit)}. To plan it: r, then subs ${space.subs.length + 1}.`,
			columns,
		);
	if (row.name.kind === 'wall')
		return wrap(
			'Everything turns with the screen. To plan it: a new profile, measured from that wall.',
			columns,
		);
	const named = (id: string, kind: ThingMove['kind']) => {
		const sub = space.subs.findIndex(one => one.id === id);
		return kind === 'seat' ? `Seats, ${say.name(id)}` : `${subLetter(sub)} ${say.name(id)}`;
	};
	const places = rowMoves(space, row)
		.filter(({kind}, i, all) => kind === 'sub' || all.findIndex(one => one.kind === 'seat') === i)
		.flatMap(({id, kind, to}) => wrap(`${named(id, kind)}: ${placeInTapeTerms(to, shape, unit)}`, columns));
	return row.againstAbove ? [...places, ...wrap(addsSentence(row), columns)] : places;
}

function curvesOf(planning: Planning): ChartSeries[] {
	const {bench, now, moving} = planning;
	const row = rowAtCursor(planning);
	const series = (name: string, {seatsDb}: LiveArrangement): ChartSeries => ({
		name,
		points: bench.frequenciesHertz.map((frequencyHz, f) => ({frequencyHz, levelDb: seatsDb[0]![f]!})),
	});
	const shown = moving
		? series('in hand', moving.live)
		: row.name.kind === 'now' || row.name.kind === 'wall'
			? undefined
			: series(rowName(planning, row), row.live);
	return [series('as it stands', now.live), ...(shown ? [shown] : [])];
}

const curveWords = (planning: Planning) =>
	chartText({series: curvesOf(planning), columns: 80, rows: 20, fromHz: 20, toHz: 120});

function bassCurve(planning: Planning, {columns, rows, isScreenReader}: PanelSize): string[] {
	return isScreenReader
		? curveWords(planning)
		: drawChart({series: curvesOf(planning), columns, rows, fromHz: 20, toHz: 120});
}

/** What to carry for the chosen row, in order; on the screen and on paper. */
export function moveTexts(planning: Planning, columns: number): string[] {
	const {profile, space} = planning;
	const unit = profile.lengthUnit ?? 'm';
	const say = sayIn(profile, unit);
	const row = rowAtCursor(planning);
	const moves = movesIn(planning, row);
	const {shape} = space.room;
	if (moves.length === 0) return ['  Nothing is carried in this row.'];
	return [
		...wrap(`${rowName(planning, row)}. ${addsSentence(row)}`, columns, '  '),
		'',
		...moveLines(moves, shape, {name: say.name, unit}, columns, '  '),
		'',
		...wrap(
			'Mark the places on the floor first, the seat before all. Heavy things in two; unplug a subwoofer before it is moved.',
			columns,
			'  ',
		),
	];
}

function whyTexts(planning: Planning, say: Say, columns: number): string[] {
	const {space} = planning;
	const row = rowAtCursor(planning);
	const {judged} = row.arrangement;
	const features = (planning.profile.room.features ?? []).map(
		({kind, on, note}, i) =>
			`${i + 1} ${kind === 'notHere' ? 'not here' : kind} ${on.replace('wall:', '')}${note ? ` (${note})` : ''}`,
	);
	return [
		...wrap(
			`${rowName(planning, row)}: judged in 20 rooms that this one might be (sizes 1.5 %, places 3 cm, waves 2 % off, decay from 0.25 to 0.65 s where it is not known). Mean ${formatNumber(judged.meanDb, 2)} dB, the 18th of 20 ${formatNumber(judged.badDb, 2)} dB. “Sure” is what at least 18 of the 20 agree on, and no less than 0.2 dB. ${addsSentence(row)}`,
			columns,
			'  ',
		),
		...(features.length > 0 ? wrap(`In the room: ${features.join(', ')}.`, columns, '  ') : []),
		...remarkLines(space.findings, columns, say),
	];
}
